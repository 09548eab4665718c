// Obstacle less touch at every spot of a zone; its greatest value over the zone is drawn jointly.
#include <algorithm>
#include <cmath>

#include "base/invariant.h"
#include "fit/notch_edge.h"
#include "fit/notch_shape.h"

namespace nook {
namespace {

constexpr double kEndless = 1e8;  // mm; bounds of a block further off are none

// The greatest reach over the zone, and the greatest excess over the adjusted room's.
struct Reaches {
  double most = kNoReach, excess = kNoReach;
};

class ZoneReaches {
 public:
  ZoneReaches(const Trials& trials, const Joint& joint, const NotchZone& zone)
      : trials_(trials), joint_(joint), adjusted_(joint.feelers.size(), kNoReach) {
    Overhang adjusted(trials, joint, 0);
    for (int s = 0; s < static_cast<int>(joint.spots.size()); ++s) {
      if (!in_zone(joint.spots[s], zone)) continue;
      for (int f = 2 * s; f < 2 * s + 2; ++f) adjusted_[f] = adjusted.reach(f);
      if (joint.spots[s].coarse) drawn_.push_back(s);
    }
  }
  double most_adjusted() const { return *std::max_element(adjusted_.begin(), adjusted_.end()); }
  Reaches in_draw(int room) const {
    Reaches reaches;
    Overhang overhang(trials_, joint_, room);
    for (int s : drawn_)
      for (int f = 2 * s; f < 2 * s + 2; ++f) {
        const double here = overhang.reach(f);
        reaches.most = std::max(reaches.most, here);
        if (here > kNoReach && adjusted_[f] > kNoReach)
          reaches.excess = std::max(reaches.excess, here - adjusted_[f]);
      }
    return reaches;
  }

 private:
  const Trials& trials_;
  const Joint& joint_;
  std::vector<double> adjusted_;  // by feeler
  std::vector<int> drawn_;        // spots of the zone that the draws look at
};

// Where a block begins and ends along the edge in one room, in t; it may be beyond the edge.
Stretch block_t(const Trials& trials, const Joint& joint, const EdgeLine& line, int block,
                int room) {
  const SiteView& view = trials.views[room];
  const WallShape& wall = view.shape().walls[joint.meets.wall];
  const BlockHere& here = view.blocks(joint.meets.wall)[block];
  const Frame& frame = trials.placings[room].frames[joint.piece];
  const Vec2 on_wall = wall.wall_from_room(plan(frame.room_from_piece({line.at.x, line.at.y, 0})));
  // As high as it is before the piece, wherever it ends.
  const double before = std::clamp(on_wall.x, here.a_from, here.a_to);
  Stretch t{1e300, -1e300};
  for (double a : {here.a_from, here.a_to})
    for (const Block::Bound& bound : {here.block->height_from, here.block->height_to}) {
      const double at = std::abs(a) < kEndless ? a : before;
      const Vec2 p = wall.room_from_wall(at, on_wall.y);
      const Vec3 q = frame.piece_from_room({p.x, p.y, view.z_of(bound, joint.meets.wall, before)});
      const double x = line.t + dot(Vec2{q.x, q.y} - line.at, line.way);
      t = {std::min(t.from, x), std::max(t.to, x)};
    }
  return t;
}

// The zone's own ends, moved out to where its blocks end in a share `sure` of the rooms.
Stretch zone_t(const Trials& trials, const Joint& joint, const NotchZone& zone, double sure) {
  const EdgeLine line = edge_line(joint, zone);
  Stretch t = zone.t;
  Tally low, high;
  for (int r = 0; r < trials.rooms(); ++r) {
    Stretch all{1e300, -1e300};
    for (int k : zone.blocks) {
      const Stretch b = block_t(trials, joint, line, k, r);
      all = {std::min(all.from, b.from), std::max(all.to, b.to)};
    }
    low.add(r, -all.from);
    high.add(r, all.to);
  }
  const double c = joint.how->clearance.mm;
  const auto& blocks = trials.views[0].blocks(joint.meets.wall);
  const bool endless = std::all_of(zone.blocks.begin(), zone.blocks.end(), [&](int k) {
    return blocks[k].a_from <= -kEndless && blocks[k].a_to >= kEndless;
  });
  if (endless && high.adjusted + low.adjusted < 1e-6) return t;  // along the whole of this edge
  t.from = std::min(t.from, -low.quantile(sure) - c);
  t.to = std::max(t.to, high.quantile(sure) + c);
  return t;
}

}  // namespace

Overhang::Overhang(const Trials& trials, const Joint& joint, int room)
    : joint_(joint),
      wall_(trials.views[room], trials.layout.site.fields(), joint.meets,
            trials.placings[room].frames[joint.piece]) {}

double Overhang::reach(int feeler) {
  const auto hit = wall_.notched(joint_.feelers[feeler]);
  return hit ? -hit->gap : kNoReach;
}

bool in_zone(const JointSpot& spot, const NotchZone& zone) {
  return spot.notched && spot.t >= zone.t.from && spot.t <= zone.t.to;
}

EdgeLine edge_line(const Joint& joint, const NotchZone& zone) {
  std::size_t first = joint.spots.size(), last = 0;
  for (std::size_t s = 0; s < joint.spots.size(); ++s)
    if (joint.spots[s].t >= zone.t.from - 1e-9 && joint.spots[s].t <= zone.t.to + 1e-9) {
      first = std::min(first, s);
      last = s;
    }
  require(first < joint.spots.size() && first < last, "a zone of an edge has spots");
  const Vec2 d = joint.spots[last].uv - joint.spots[first].uv;
  return {joint.spots[first].uv, (1 / norm(d)) * d, joint.spots[first].t};
}

NotchDepth notch_depth(const Trials& trials, const Joint& joint, const NotchZone& zone,
                       double sure) {
  const ZoneReaches zone_reaches(trials, joint, zone);
  Tally most, excess;
  most.add(0, std::max(zone_reaches.most_adjusted(), -kReach));
  for (int r = 1; r < trials.rooms(); ++r) {
    const Reaches reaches = zone_reaches.in_draw(r);
    most.add(r, std::max(reaches.most, -kReach));
    excess.add(r, std::max(0.0, reaches.excess));
  }
  NotchDepth depth;
  const double reach = most.quantile(sure);
  depth.needed = reach > 0;
  if (!depth.needed) return depth;
  depth.depth = reach + joint.how->clearance.mm;
  depth.deeper = excess.quantile(sure);
  depth.sd = most.sd();
  depth.t = zone_t(trials, joint, zone, sure);
  return depth;
}

}  // namespace nook
