// The room in plan, true and with its faults made large.
#pragma once

#include "base/measured.h"
#include "sheet/draft.h"
#include "sheet/scene.h"

namespace nook {

/// The room from above, the wall one faces at the top, with the pieces standing in it.
Drawing plan(const JobScene& scene, const Canvas& canvas);

/// The same walls beside a square room: every angle's error, lean and hump times one factor,
/// printed.
Drawing plan_made_large(const JobScene& scene, const Canvas& canvas);

/// The factor: of 1, 2, 5, 10, 20, 50 the largest that keeps every corner's error below 15 degrees
/// and every wall's stray below a tenth of its length.
int factor_made_large(const RoomShape& room);

/// "open" or "closed" where the give or take tells, else "square" or "may be square".
std::string squareness(Measured angle_deg);

/// "open 7/8\" in 36\", give or take 1/8\"": how far a corner is out of square, as a tape finds it,
/// to one side; where that cannot be told, as squareness.
std::string out_of_square(Measured angle_deg, const Rounding& rounding);

}  // namespace nook
