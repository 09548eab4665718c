// Other contacts open or close in proportion to the move; covers are looked at where they would be.
#include "fit/room_to_move.h"

#include <algorithm>
#include <cmath>

#include "design/fitting.h"
#include "fit/find_covered.h"
#include "fit/touching.h"

namespace nook {
namespace {

constexpr double kEndless = 1e9;   // mm; nothing stops it
constexpr double kSideways = 0.1;  // cosine; a contact this square to the move is not changed by it

Vec3 way_of(const Trials& trials, const Joint& joint) {
  if (joint.feelers.empty()) return {};
  return ray_of(joint.feelers.front(), trials.placings[0].frames[joint.piece]).way;
}

class Mover {
 public:
  Mover(const Trials& trials, int joint, double wish)
      : trials_(trials), index_(joint), wish_(wish), joint_(trials.layout.joints[joint]) {
    way_ = way_of(trials, joint_);
    group_ = trials.layout.group_of[joint_.piece];
  }

  RoomToMove found() {
    if (norm(way_) == 0) return room_;
    for (int j : trials_.layout.groups[group_].joints) look_at_joint(j);
    const auto& covered = trials_.layout.scene.design.covered;
    for (int c = 0; c < static_cast<int>(covered.size()); ++c) look_at_cover(c);
    return room_;
  }

 private:
  bool own(int piece) const { return trials_.layout.group_of[piece] == group_; }

  void bound(double limit, const std::string& what) {
    room_.distance = std::min(room_.distance, std::max(0.0, limit));
    if (limit < wish_ - kTouching) room_.spoils.push_back(what);
  }

  void look_at_joint(int j) {
    const Joint& other = trials_.layout.joints[j];
    if (j == index_ || !other.can_meet) return;
    const JointState state = brief_state_of(trials_.layout, other, trials_.gaps[0][j]);
    const double closing = dot(way_, way_of(trials_, other));
    if (!state.met || std::abs(closing) < kSideways) return;
    const std::string what = trials_.layout.scene.pieces[other.piece].name + ", " +
                             other.how->edge_given + " at the " + other.how->meets;
    const bool clear = other.how->by == Fitting::clear;
    if (closing > 0 && is_cut_to_fit(other.how->by)) return;  // more of its own wood is cut
    if (closing > 0) bound((state.least - (clear ? other.how->gap.mm : 0)) / closing, what);
    if (closing < 0 && !clear) bound((allowed_gap(*other.how) - state.most) / -closing, what);
  }

  void look_at_cover(int c) {
    const Scene& scene = trials_.layout.scene;
    const Covered& covered = scene.design.covered[c];
    std::vector<Frame> moved = trials_.placings[0].frames;
    if (wish_ < kTouching) return;
    for (int p : trials_.layout.groups[group_].pieces) moved[p].at = moved[p].at + wish_ * way_;
    for (int piece : pieces_named(scene.pieces, scene.design, covered.part))
      for (int behind : pieces_named(scene.pieces, scene.design, covered.behind)) {
        if (own(piece) == own(behind)) continue;
        const double before = cover_margin(trials_, c, piece, behind, trials_.placings[0].frames);
        const double after = cover_margin(trials_, c, piece, behind, moved);
        if (before < covered.margin.mm || after >= before - 1e-9) continue;
        bound(wish_ * (before - covered.margin.mm) / (before - after),
              scene.pieces[piece].name + " behind the " + scene.pieces[behind].name);
      }
  }

  const Trials& trials_;
  int index_;
  double wish_;
  const Joint& joint_;
  int group_ = 0;
  Vec3 way_;
  RoomToMove room_{kEndless, {}};
};

}  // namespace

RoomToMove room_to_move(const Trials& trials, int joint, double wish) {
  return Mover(trials, joint, wish).found();
}

}  // namespace nook
