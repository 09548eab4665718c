// Pieces against the room by their feelers, against obstacles and each other as convex solids.
#include "fit/find_clashes.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "design/fitting.h"
#include "fit/easing.h"
#include "fit/find_notches.h"
#include "fit/obstacle_solid.h"
#include "fit/surface_ahead.h"
#include "fit/touching.h"

namespace nook {
namespace {

constexpr double kNear = 20;  // mm; pairs further apart in the adjusted room do not meet in a draw

// One pair's overlap in every room.
struct Overlap {
  Tally depth;
  Vec3 at;
};
using Overlaps = std::map<std::pair<int, std::string>, Overlap>;

struct Deepest {
  double depth = 0;
  Vec3 at;
  std::string with;
  void look(double next, Vec3 where, const std::string& name) {
    if (next > depth) depth = next, at = where, with = name;
  }
};

class ClashFinder {
 public:
  ClashFinder(const Trials& trials, const std::vector<NotchFit>& notches) : trials_(trials) {
    const Scene& scene = trials.layout.scene;
    for (int p = 0; p < static_cast<int>(scene.pieces.size()); ++p) {
      cuts_.push_back(cut_out_of(notches, p));
      solids_.push_back(
          solid_of(cuts_[p].empty() ? scene.bodies[p] : body_less(scene.bodies[p], cuts_[p]), p));
      boxes_.push_back(box_of(solids_[p].hull.corners, trials.placings[0].frames[p]));
    }
  }

  Overlaps all() {
    for (const Guard& guard : trials_.layout.guards) look_at_guard(guard);
    for (int j = 0; j < static_cast<int>(trials_.layout.joints.size()); ++j) look_at_joint(j);
    look_at_obstacles();
    look_at_pieces();
    return std::move(overlaps_);
  }

 private:
  const Piece& piece(int p) const { return trials_.layout.scene.pieces[p]; }

  void note(int p, const std::string& with, int room, double depth, Vec3 at) {
    Overlap& overlap = overlaps_[{p, with}];
    if (room == 0) {
      if (depth > overlap.depth.adjusted) overlap.at = at;
      overlap.depth.adjusted = std::max(overlap.depth.adjusted, depth);
      return;
    }
    overlap.depth.drawn.resize(trials_.rooms() - 1);
    double& deepest = overlap.depth.drawn[room - 1];
    deepest = std::max(deepest, depth);
  }

  bool cut_away(int p, Vec3 at) const {
    return std::any_of(cuts_[p].begin(), cuts_[p].end(), [&](const Region& r) {
      return contains(r, {at.x, at.y});
    });
  }

  std::string surface_name(Surface surface) const {
    if (surface.kind == Surface::Kind::floor) return "floor";
    if (surface.kind == Surface::Kind::ceiling) return "ceiling";
    return trials_.views[0].shape().walls[surface.wall].name + " wall";
  }

  bool cut_on_purpose(const Guard& guard) const {
    const auto& joints = trials_.layout.joints;
    return std::any_of(joints.begin(), joints.end(), [&](const Joint& j) {
      return j.piece == guard.piece && j.meets == guard.surface && is_cut_to_fit(j.how->by);
    });
  }

  void look_at_guard(const Guard& guard) {
    if (cut_on_purpose(guard)) return;
    const std::string name = surface_name(guard.surface);
    std::vector<const Feeler*> feelers;
    for (const Feeler& feeler : guard.feelers)
      if (!cut_away(guard.piece, feeler.at)) feelers.push_back(&feeler);
    for (int r = 0; r < trials_.rooms(); ++r) {
      SurfaceAhead ahead(trials_.views[r], trials_.layout.site.fields(), guard.surface,
                         trials_.placings[r].frames[guard.piece]);
      for (const Feeler* feeler : feelers)
        if (const Hit hit = ahead.surface(*feeler); hit.gap < 0)
          note(guard.piece, name, r, -hit.gap, hit.at);
    }
  }

  void look_at_joint(int j) {
    const Joint& joint = trials_.layout.joints[j];
    if (!joint.can_meet || is_cut_to_fit(joint.how->by)) return;
    if (joint.meets.kind == Surface::Kind::part) return;  // looked at as solids
    for (int r = 0; r < trials_.rooms(); ++r)
      for (std::size_t f = 0; f < joint.feelers.size(); ++f) {
        const double gap = trials_.gaps[r][j][f];
        if (!(gap < 0)) continue;
        const Ray ray = ray_of(joint.feelers[f], trials_.placings[r].frames[joint.piece]);
        note(joint.piece, joint.how->meets, r, -gap, ray.from + gap * ray.way);
      }
  }

  void look_at_obstacles() {
    for (std::size_t b = 0; b < trials_.layout.obstacles.size(); ++b) {
      const std::vector<NearCell> near = cells_near(trials_.obstacle(0, b));
      for (int r = 0; !near.empty() && r < trials_.rooms(); ++r) {
        const ObstacleSolid there = trials_.obstacle(r, b);
        const std::string& name = trials_.layout.obstacles.name(trials_.layout.site, b);
        for (const NearCell& n : near) look_at_obstacle(r, there, name, n);
      }
    }
  }

  // A cell of a piece near an obstacle, and what parts them in the adjusted room.
  struct NearCell {
    const CellSolid* cell;
    Apart adjusted;
  };

  std::vector<NearCell> cells_near(const ObstacleSolid& obstacle) const {
    const RoomBox box = box_of(obstacle.corners, obstacle.frame);
    const CellSolid solid = obstacle.cell();
    std::vector<NearCell> near;
    for (const PieceSolid& piece : solids_) {
      if (apart(box, boxes_[piece.hull.piece]) > kNear) continue;
      const Frame& frame = trials_.placings[0].frames[piece.hull.piece];
      if (apart(solid, obstacle.frame, piece.hull, frame).distance > kNear) continue;
      for (const CellSolid& cell : piece.cells)
        if (const Apart a = apart(solid, obstacle.frame, cell, frame); a.distance < kNear)
          near.push_back({&cell, a});
    }
    return near;
  }

  void look_at_obstacle(int room, const ObstacleSolid& obstacle, const std::string& name,
                        const NearCell& near) {
    const int p = near.cell->piece;
    const Frame& frame = trials_.placings[room].frames[p];
    const double along =
        apart_along(near.adjusted, obstacle.corners, obstacle.frame, near.cell->corners, frame);
    if (along >= -kTouching / 2) return;
    const double depth = -apart(obstacle.cell(), obstacle.frame, *near.cell, frame).distance;
    if (depth > 0) note(p, name, room, depth, obstacle.frame.at);
  }

  void look_at_pieces() {
    const int count = static_cast<int>(solids_.size());
    for (int a = 0; a < count; ++a)
      for (int b = a + 1; b < count; ++b)
        if (apart(boxes_[a], boxes_[b]) <= kNear && !cut_to_fit(a, b)) look_at_pair(a, b);
  }

  void look_at_pair(int a, int b) {
    const auto& frames = trials_.placings[0].frames;
    const Apart whole = apart(solids_[a].hull, frames[a], solids_[b].hull, frames[b]);
    if (whole.distance > kNear) return;
    if (whole.distance >= 0) return look_at_cells(solids_[a].hull, solids_[b].hull, whole);
    for (const CellSolid& ca : solids_[a].cells)
      for (const CellSolid& cb : solids_[b].cells) {
        const Apart cells = apart(ca, frames[a], cb, frames[b]);
        if (cells.distance < kNear) look_at_cells(ca, cb, cells);
      }
  }

  // In the draws the axis that parts two solids in the adjusted room mostly still does. Pieces of
  // one group stand to each other as in the adjusted room.
  void look_at_cells(const CellSolid& a, const CellSolid& b, const Apart& adjusted) {
    const bool together = trials_.layout.group_of[a.piece] == trials_.layout.group_of[b.piece];
    double depth = 0;
    for (int r = 0; r < trials_.rooms(); ++r) {
      const auto& frames = trials_.placings[r].frames;
      if (r == 0 || !together) depth = depth_in(r, a, b, adjusted);
      if (depth > 0) note(a.piece, piece(b.piece).name, r, depth, frames[b.piece].at);
      if (together && depth <= 0) return;
    }
  }

  // Less what either comes off the other once its edges are scribed.
  double depth_in(int room, const CellSolid& a, const CellSolid& b, const Apart& adjusted) const {
    const auto& frames = trials_.placings[room].frames;
    const Frame &fa = frames[a.piece], &fb = frames[b.piece];
    if (apart_along(adjusted, a.corners, fa, b.corners, fb) >= -kTouching / 2) return 0;
    const Apart there = apart(a, fa, b, fb);
    if (there.distance >= -kTouching / 2) return 0;
    const Frame& held = there.of_b ? fb : fa;
    const Vec3 way = there.axis.x * held.u + there.axis.y * held.v + there.axis.z * held.w;
    return -there.distance - eased_along(trials_, room, a.piece, -way) -
           eased_along(trials_, room, b.piece, way);
  }

  // A scribed or tapered edge of one against the other.
  bool cut_to_fit(int a, int b) const {
    const auto& joints = trials_.layout.joints;
    return std::any_of(joints.begin(), joints.end(), [&](const Joint& j) {
      if (!is_cut_to_fit(j.how->by)) return false;
      const auto meets = [&](int p) {
        return std::find(j.parts.begin(), j.parts.end(), p) != j.parts.end();
      };
      return (j.piece == a && meets(b)) || (j.piece == b && meets(a));
    });
  }

  const Trials& trials_;
  std::vector<Regions> cuts_;
  std::vector<PieceSolid> solids_;
  std::vector<RoomBox> boxes_;  // in the adjusted room
  Overlaps overlaps_;
};

}  // namespace

std::vector<ClashFit> find_clashes(const Trials& trials, const std::vector<NotchFit>& notches,
                                   double sure, Holds& all_hold) {
  std::vector<ClashFit> clashes;
  for (const auto& [pair, overlap] : ClashFinder(trials, notches).all()) {
    Holds holds(trials.rooms());
    holds.set(0, overlap.depth.adjusted <= kTouching);
    for (std::size_t r = 0; r < overlap.depth.drawn.size(); ++r)
      holds.set(static_cast<int>(r) + 1, overlap.depth.drawn[r] <= kTouching);
    all_hold.both(holds);
    ClashFit clash;
    clash.piece = pair.first;
    clash.part = trials.layout.scene.pieces[pair.first].name;
    clash.with = pair.second;
    clash.depth_mm = overlap.depth.adjusted;
    clash.sd_mm = overlap.depth.sd();
    clash.most_mm = std::max(clash.depth_mm, overlap.depth.quantile(sure));
    clash.at = overlap.at;
    clash.chance = holds.chance();
    clash.verdict = holds.verdict(sure);
    if (clash.depth_mm > kTouching || clash.verdict != Verdict::fits) clashes.push_back(clash);
  }
  std::stable_sort(clashes.begin(), clashes.end(),
                   [](const ClashFit& a, const ClashFit& b) { return a.depth_mm > b.depth_mm; });
  return clashes;
}

}  // namespace nook
