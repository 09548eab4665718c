// Widest gaps of scribed edges that look a given way.
#include "fit/easing.h"

#include <algorithm>

#include "fit/contact_lines.h"

namespace nook {
namespace {

const double kSameWay = direction(degrees(20)).cos;  // more aslant does not help. Chosen

bool is_scribed_along(const Trials& trials, int room, const Joint& joint, Vec3 way) {
  if (joint.how->by != Fitting::scribe || !joint.can_meet || joint.feelers.empty()) return false;
  const Frame& frame = trials.placings[room].frames[joint.piece];
  return dot(way_in_room(joint.feelers.front(), frame), way) > kSameWay;
}

// How far it comes closer.
double closes_by(const Trials& trials, int room, int joint) {
  const JointTrials judge(trials, joint);
  const JointState state = judge.state(room);
  return state.met ? std::max(0.0, state.most - judge.joint.how->gap.mm) : 0;
}

}  // namespace

double eased_along(const Trials& trials, int room, int piece, Vec3 way) {
  double most = 0;
  for (int j = 0; j < static_cast<int>(trials.layout.joints.size()); ++j) {
    const Joint& joint = trials.layout.joints[j];
    if (joint.piece == piece && is_scribed_along(trials, room, joint, way))
      most = std::max(most, closes_by(trials, room, j));
  }
  return most;
}

std::string easing_edge(const Trials& trials, int piece, Vec3 way) {
  for (const Joint& joint : trials.layout.joints)
    if (joint.piece == piece && is_scribed_along(trials, 0, joint, way))
      return joint.how->edge_given +
             (std::holds_alternative<EdgeSide>(joint.how->edge) ? " edge at the " : " at the ") +
             joint.how->meets;
  return {};
}

}  // namespace nook
