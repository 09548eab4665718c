// What the readings do not say, in words, with what to take.
#pragma once

#include "survey/report.h"
#include "survey/solution.h"

namespace nook {

/// Unknowns that no reading determines, leans that are hardly better known than before.
std::vector<Missing> missing(const RoomModel& model, const Solution& solution);

/// Whether the room's figures stand.
bool nothing_blocks(const RoomReport& report);

}  // namespace nook
