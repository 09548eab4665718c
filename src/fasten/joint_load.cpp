// A load down, split into what shears and what pulls the screws of a joint.
#include "fasten/joint_load.h"

#include <algorithm>
#include <cmath>

#include "fasten/load_share.h"

namespace nook {
namespace {

// Screws driven level or nearly so share the load like a ledger's; steeper ones alike. Chosen: 60.
const double kLevelEnough = direction(degrees(60)).cos;

std::vector<ScrewLoad> sideways(const JointLoad& joint, double load) {
  const Vec3 into = joint.into;
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

}  // namespace

Strength strength_of_joint(const JointLoad& joint, Loaded loaded, const Saying& say) {
  if (joint.at.empty()) return strength_of(loaded, say);
  const double load = loaded.load.value_or(0), n = static_cast<double>(joint.at.size());
  const auto side = sideways(joint, load);
  if (side.empty()) {
    loaded.no_figure = "one screw and a load beside it: the piece turns about it";
    loaded.no_figure_advice = kTwoScrews;
  }
  for (std::size_t i = 0; i < side.size(); ++i) {
    loaded.screws[i].sideways = std::hypot(side[i].down, side[i].level);
    // into.z < 0: driven down, the load presses.
    loaded.screws[i].pull = std::max(0.0, (loaded.pull.value_or(0) + joint.into.z * load) / n);
  }
  return strength_of(loaded, say);
}

}  // namespace nook
