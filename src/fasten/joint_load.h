// What screws from one piece into another carry, by the direction they are driven in.
#pragma once

#include "fasten/joint.h"
#include "fasten/strength.h"

namespace nook {

/// Strength of one joint with its screws, whose holes have their ids. A load down that presses the
/// pieces together is carried by the wood, and is not counted on against a pull; one that parts
/// them pulls the screws, and pries where it stands beside them. Advises only what was tried.
Strength strength_of_joint(const Joining& joining, const JointScrews& screws);

}  // namespace nook
