// What screws from one piece into another carry, by the direction they are driven in.
#pragma once

#include "base/vector.h"
#include "fasten/strength.h"

namespace nook {

/// Fills the loads of `loaded.screws` (one for each place of `at`) and rates them. A load down that
/// presses the pieces together is carried by the wood, one that parts them pulls the screws.
/// `load_at` is where the load stands. All in the room frame.
Strength strength_of_joint(const std::vector<Vec3>& at, Vec3 into, Vec3 load_at, Loaded loaded,
                           const Saying& say);

}  // namespace nook
