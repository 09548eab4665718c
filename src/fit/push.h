// One group on its way home in one room: what holds it, which way it may move.
#pragma once

#include "fit/place.h"
#include "fit/plan_program.h"

namespace nook {

class Push {
 public:
  /// `so_far` holds the frames of the groups that went in before.
  Push(const Layout& layout, const SiteView& view, int group, const Placing& so_far);

  /// Where it starts, and where it ends: relinearized with exact sine and cosine, from `guess` on,
  /// until nothing moves by 0.001 mm, at most 20 times. `stops` as for pushed_home.
  Motion start() const { return start_; }
  Motion home(const Moves& guess, StopsOnTheWay& stops);
  /// How it went home from its start.
  const Moves& moves() const { return moves_; }

 private:
  void lay_off();
  void find_ways();
  std::optional<double> parallel_turn() const;
  void turn_parallel();
  void find_planes();
  Frame frame_in(int piece, const Moved& moved) const {
    return own(piece) ? moved.frame(layout_.scene.pieces[piece].frame) : so_far_.frames[piece];
  }
  bool own(int piece) const { return layout_.group_of[piece] == index_; }
  const Joint& joint_of(const Hold& hold) const { return layout_.joints[hold.joint]; }
  /// Of the piece with the joint's feelers.
  Frame frame_of(const Hold& hold, const Moved& moved) const {
    return frame_in(joint_of(hold).piece, moved);
  }
  std::vector<Standing> parts_of(const Hold& hold, const Moved& moved) const;
  Vec2 way_of(const Hold& hold, const Frame& frame) const;
  void find_spans();
  bool turns() const;
  Motion motion_at(const Moves& x, double rise) const;
  double rise_from(const Motion& motion) const;
  double rise_to_floor(const Motion& motion) const;
  double rise_to_joints(const Motion& motion, Surface::Kind kind) const;
  // Where the group is while its gaps are looked at.
  struct Here {
    Moved moved;
    const Moves& x;
    Vec2 pivot;
  };
  const std::vector<PlanGap>& gaps_at(const Motion& motion, const Moves& x) const;
  void add_gap(const Hit& hit, const Here& here, PlanGap gap, std::vector<PlanGap>& gaps) const;
  void add_joints(const Here& here, std::vector<PlanGap>& gaps) const;
  void add_guards(const Here& here, std::vector<PlanGap>& gaps) const;
  void add_partings(const Here& here, std::vector<PlanGap>& gaps) const;
  Wishes wishes() const;
  bool may_run_into_blocks() const;
  double bend(const Moves& from, const Moves& to) const;

  const Layout& layout_;
  const SiteView& view_;
  const Assembly& group_;
  int index_;
  const Placing& so_far_;
  Motion start_;
  const Pulls& pulls_;
  std::vector<double> spans_;                // by target: how far its contacts reach across its way
  std::vector<Vec2> ways_;                   // free directions in plan: none, one or two
  std::vector<const PartingPlane*> planes_;  // what parts it from pieces already in
  bool turn_free_ = false;
  Vec2 pivot_;
  double rim_ = 50;  // mm from the pivot where a turn is measured
  Moves moves_{};
};

}  // namespace nook
