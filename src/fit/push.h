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
  // One joint that pulls; turned round where a piece that is already in meets this group.
  struct Hold {
    int joint;
    int target;
    bool round;
  };
  void lay_off();
  void find_holds();
  void find_ways();
  void turn_parallel();
  void find_planes();
  Frame frame_in(int piece, const Motion& motion) const {
    return own(piece) ? motion.frame(layout_.scene.pieces[piece].frame) : so_far_.frames[piece];
  }
  bool in_before(int piece) const;
  bool own(int piece) const { return layout_.group_of[piece] == index_; }
  bool pulls(const Joint& joint) const;
  void add_hold(int joint, const std::string& target, bool round);
  Frame frame_of(const Hold& hold, const Motion& motion) const;
  std::vector<Standing> parts_of(const Hold& hold, const Motion& motion) const;
  Vec2 way_of(const Hold& hold) const;
  double span_of(int target) const;
  bool turns() const;
  Motion motion_at(const Moves& x, double rise) const;
  double rise_from(const Motion& motion) const;
  double rise_to_floor(const Motion& motion) const;
  double rise_to_joints(const Motion& motion, Surface::Kind kind) const;
  std::vector<PlanGap> gaps_at(const Motion& motion, const Moves& x) const;
  void add_gap(const Hit& hit, const Moves& x, PlanGap gap, std::vector<PlanGap>& gaps) const;
  void add_joints(const Motion& motion, const Moves& x, std::vector<PlanGap>& gaps) const;
  void add_guards(const Motion& motion, const Moves& x, std::vector<PlanGap>& gaps) const;
  void add_partings(const Motion& motion, const Moves& x, std::vector<PlanGap>& gaps) const;
  Wishes wishes() const;
  bool may_run_into_blocks() const;
  double bend(const Moves& from, const Moves& to) const;

  const Layout& layout_;
  const SiteView& view_;
  const Assembly& group_;
  int index_;
  const Placing& so_far_;
  Motion start_;
  std::vector<Hold> holds_;
  std::vector<std::string> targets_;         // what holds pull to, tight ones first
  std::vector<Vec2> ways_;                   // free directions in plan: none, one or two
  std::vector<const PartingPlane*> planes_;  // what parts it from pieces already in
  bool turn_free_ = false;
  Vec2 pivot_;
  double rim_ = 50;  // mm from the pivot where a turn is measured
  Moves moves_{};
};

}  // namespace nook
