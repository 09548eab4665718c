// Overlap that is left after pushing home and notching.
#pragma once

#include "fit/fit_answer.h"
#include "fit/trials.h"

namespace nook {

/// Overlaps deeper than 0.1 mm in the adjusted room, or likelier than 1 - sure, worst first.
/// Overlap at a contact that is scribed or tapered is wood to be cut and none.
std::vector<ClashFit> find_clashes(const Trials& trials, const std::vector<NotchFit>& notches,
                                   double sure, Holds& all_hold);

}  // namespace nook
