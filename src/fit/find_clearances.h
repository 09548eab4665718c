// Least distances between solids, and between a solid and the room, over their whole length.
#pragma once

#include "fit/fit_answer.h"
#include "fit/trials.h"

namespace nook {

/// Every contact `by = "clear"` with its needed distance, then what else stands within 2 in of a
/// wall, an obstacle or a piece of another group without a contact to it (needed 0).
/// Pieces count with their notches cut.
std::vector<ClearanceFit> find_clearances(const Trials& trials,
                                          const std::vector<NotchFit>& notches, double sure,
                                          Holds& all_hold);

}  // namespace nook
