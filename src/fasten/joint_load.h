// What screws from one piece into another carry, by the direction they are driven in.
#pragma once

#include "base/vector.h"
#include "fasten/strength.h"

namespace nook {

/// Where screws stand, which way they are driven and where the load stands. All in the room frame.
struct JointLoad {
  std::vector<Vec3> at;
  Vec3 into, load_at;
};

/// Fills the loads of `loaded.screws` (one for each place of `joint.at`) and rates them. A load
/// down that presses the pieces together is carried by the wood, one that parts them pulls the
/// screws.
Strength strength_of_joint(const JointLoad& joint, Loaded loaded, const Saying& say);

}  // namespace nook
