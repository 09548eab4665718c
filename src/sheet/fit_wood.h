// What wood a piece lacks at an edge, and how large its blank has to be for it.
#pragma once

#include <optional>
#include <string>

#include "fit/fit_answer.h"
#include "sheet/answer.h"

namespace nook {

/// The contact at the opposite edge of the same piece that meets something it cannot stand off
/// from; null where there is none.
const ContactFit* across_from(const FitAnswer& fit, const ContactFit& contact);

/// What the edge would have to grow, mm: its widest gap less the gap wanted and the wood there is;
/// never under 0. 0 where what the contact leaves open is hidden or accepted.
double wood_missing(const ContactFit& contact);

/// "the drawn piece has no wood for 1/2" of it, nor for 1/2" at its right edge: rip the blank 48"
/// and leave both edges wild"; "crosscut" for the length of a stick. The blank covers what is
/// missing at both ends of the piece. Empty where less than half a mark is missing.
std::string missing_wood(const FitAnswer& fit, const ContactFit& contact, const Style& style);

}  // namespace nook
