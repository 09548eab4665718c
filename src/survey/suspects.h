// Readings that cannot be right: found, placed where that is possible, and explained.
#pragma once

#include "survey/report.h"
#include "survey/solution.h"

namespace nook {

/// 1. Nothing is suspect while the global test passes (alpha .001) and no |w| is larger than the
///    largest of so many would be in a thousandth of rooms (Bonferroni).
/// 2. Then slips are looked for one at a time, among readings with |w| over 3.29, each scored by
///    the room adjusted without it: the chance that it was meant to be something else, or anything
///    else (posterior odds). Repeats that agree are scored together too. The room is adjusted again
///    without the likeliest, until the test passes.
/// 3. Where no single one stands out, all that share 99.5 % of the chance are named together.
/// Adds suspects, and to `missing` that the readings disagree all over. Result: the solution
/// without the likeliest slips.
Solution add_suspects(const RoomModel& model, const Solution& solution, RoomReport& report);

}  // namespace nook
