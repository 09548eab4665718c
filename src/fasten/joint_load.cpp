// A load down, split into what shears and what pulls the screws of a joint.
#include "fasten/joint_load.h"

#include <algorithm>
#include <cmath>

#include "fasten/load_share.h"
#include "fasten/prying.h"

namespace nook {
namespace {

// Screws driven level or nearly so share the load like a ledger's; steeper ones alike. Chosen: 60.
const double kLevelEnough = direction(degrees(60)).cos;

std::vector<ScrewLoad> sideways(const JointLoad& joint, double load) {
  const Vec3 into = joint.plane.normal;
  const auto& at = joint.at;
  const double across = std::hypot(into.x, into.y);
  const double shear = load * across;
  if (across < kLevelEnough)
    return std::vector<ScrewLoad>(at.size(), {shear / static_cast<double>(at.size()), 0});
  const Vec3 level{into.y / across, -into.x / across, 0};
  std::vector<Vec2> places;
  for (Vec3 p : at) places.push_back({dot(p, level), p.z});
  return shares(places, shear, dot(joint.load_at, level));
}

// A stated place says where along the piece; across it the force stands in the middle of what
// meets.
Pried parted(const JointLoad& joint, double force) {
  const CutPlane& plane = joint.plane;
  const Box2 box = box_of(joint.bearing);
  PullAway pull{force, 0.5 * (box.low + box.high), joint.bearing};
  if (!joint.spread) pull.at.x = plane.plane_from_room(joint.load_at).x;
  std::vector<Vec2> screws;
  for (Vec3 p : joint.at) screws.push_back(plane.plane_from_room(p));
  return pried(screws, pull);
}

}  // namespace

Strength strength_of_joint(const JointLoad& joint, Loaded loaded, const Saying& say) {
  if (joint.at.empty()) return strength_of(loaded, say);
  const double load = loaded.load.value_or(0);
  const auto side = sideways(joint, load);
  if (side.empty()) {
    loaded.no_figure = "one screw and a load beside it: the piece turns about it";
    loaded.no_figure_advice = kTwoScrews;
  }
  // normal.z < 0: driven down, the load presses.
  const double hanging = std::max(0.0, joint.plane.normal.z * load);
  const Pried pull = parted(joint, loaded.pull.value_or(0) + hanging);
  for (std::size_t i = 0; i < side.size(); ++i) {
    loaded.screws[i].sideways = std::hypot(side[i].down, side[i].level);
    loaded.screws[i].pull = pull.newtons.at(i);
  }
  Strength out = strength_of(loaded, say);
  if (pull.bears_at)
    out.notes.push_back("the pull pries: the pieces bear on each other beside the screws");
  return out;
}

}  // namespace nook
