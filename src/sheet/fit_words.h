// Words for ways of fitting and for places, shared by text and JSON of a fit.
#pragma once

#include <string>
#include <string_view>

#include "design/design.h"
#include "fit/fit_answer.h"

namespace nook {

/// "butt", "clear", ... as the design file spells them.
std::string_view by_word(Fitting by);

/// "front panel, left edge at the left wall"; "deck, back on the left ledger".
std::string contact_place(const ContactFit& contact);

/// "the left wall", "the floor", "the deck".
std::string the(const std::string& name);

}  // namespace nook
