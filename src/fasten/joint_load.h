// What screws from one piece into another carry, by the direction they are driven in.
#pragma once

#include "base/vector.h"
#include "fasten/section.h"
#include "fasten/strength.h"

namespace nook {

/// Where screws and load stand, in the room frame, and where the pieces meet: the screws are driven
/// along the normal of `plane`, in whose coordinates `bearing` is the outline they meet on.
struct JointLoad {
  std::vector<Vec3> at;
  Vec3 load_at;
  CutPlane plane;
  Polygon bearing;
  bool spread = false;  // no place is stated: over all of where they meet
};

/// Fills the loads of `loaded.screws` (one for each place of `joint.at`) and rates them. A load
/// down that presses the pieces together is carried by the wood, and is not counted on against a
/// pull; one that parts them pulls the screws, and pries where it stands beside them.
Strength strength_of_joint(const JointLoad& joint, Loaded loaded, const Saying& say);

}  // namespace nook
