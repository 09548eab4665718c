// What undecided findings hang on: the spots of the room that would settle them.
#pragma once

#include "fit/fit_answer.h"
#include "fit/trials.h"

namespace nook {

/// For each contact that cannot be told: how its deciding gap moves when the surfaces move at the
/// spots that its group and those before it touch, and at the gap's own widest and narrowest spots.
std::vector<OpenFinding> find_open(const Trials& trials, Site& site,
                                   const std::vector<ContactFit>& contacts);

}  // namespace nook
