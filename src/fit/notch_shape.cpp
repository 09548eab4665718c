// Obstacle less touch at every spot of a zone; its greatest value over the zone is drawn jointly.
#include "fit/notch_shape.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "solid/boolean.h"
#include "solid/cells.h"

namespace nook {
namespace {

constexpr double kNone = -std::numeric_limits<double>::infinity();
constexpr double kOutside = 50;  // mm that a notch runs out beyond the edge before it is clipped

// How far a block reaches over the edge at one feeler; nothing where no block is met.
double reach_over(const Trials& trials, const Joint& joint, int feeler, int room) {
  const Feeler& f = joint.feelers[feeler];
  const auto hit = block_hit(trials.views[room], trials.layout.site.fields(), joint.meets, f,
                             ray_of(f, trials.placings[room].frames[joint.piece]));
  return hit ? -hit->gap : kNone;
}

bool in_zone(const JointSpot& spot, const NotchZone& zone) {
  return spot.notched && spot.t >= zone.t.from && spot.t <= zone.t.to;
}

// The greatest reach over the zone, and the greatest excess over the adjusted room's.
struct Reaches {
  double most = kNone, excess = kNone;
};
Reaches reaches_in(const Trials& trials, const Joint& joint, const NotchZone& zone, int room) {
  Reaches reaches;
  for (int s = 0; s < static_cast<int>(joint.spots.size()); ++s) {
    if (!in_zone(joint.spots[s], zone) || !(room == 0 || joint.spots[s].coarse)) continue;
    for (int f = 2 * s; f < 2 * s + 2; ++f) {
      const double here = reach_over(trials, joint, f, room);
      reaches.most = std::max(reaches.most, here);
      const double adjusted = room == 0 ? here : reach_over(trials, joint, f, 0);
      if (here > kNone && adjusted > kNone)
        reaches.excess = std::max(reaches.excess, here - adjusted);
    }
  }
  return reaches;
}

Vec2 unit(Vec2 d) {
  return (1 / norm(d)) * d;
}

// The edge at the zone: a point of it where t = t0, and its direction.
struct EdgeLine {
  Vec2 at, way;
  double t = 0;
  Vec2 point(double at_t) const { return at + (at_t - t) * way; }
};
EdgeLine line_of(const Joint& joint, const NotchZone& zone) {
  const JointSpot *first = nullptr, *last = nullptr;
  for (const JointSpot& s : joint.spots)
    if (s.t >= zone.t.from - 1e-9 && s.t <= zone.t.to + 1e-9) {
      if (!first) first = &s;
      last = &s;
    }
  return {first->uv, unit(last->uv - first->uv), first->t};
}

// Where a block begins and ends along the edge in one room, in t; it may be beyond the edge.
Stretch block_t(const Trials& trials, const Joint& joint, const EdgeLine& line, int block,
                int room) {
  const SiteView& view = trials.views[room];
  const WallShape& wall = view.shape().walls[joint.meets.wall];
  const BlockHere& here = view.blocks(joint.meets.wall)[block];
  const Frame& frame = trials.placings[room].frames[joint.piece];
  const Vec2 on_wall = wall.wall_from_room(plan(frame.room_from_piece({line.at.x, line.at.y, 0})));
  Stretch t{1e300, -1e300};
  for (double a : {here.a_from, here.a_to})
    for (const Block::Bound& bound : {here.block->height_from, here.block->height_to}) {
      const double at = std::abs(a) < 1e8 ? a : on_wall.x;
      const Vec2 p = wall.room_from_wall(at, on_wall.y);
      const Vec3 q = frame.piece_from_room({p.x, p.y, view.z_of(bound, joint.meets.wall, at)});
      const double x = line.t + dot(Vec2{q.x, q.y} - line.at, line.way);
      t = {std::min(t.from, x), std::max(t.to, x)};
    }
  return t;
}

// The zone's own ends, moved out to where its blocks end in a share `sure` of the rooms.
Stretch zone_t(const Trials& trials, const Joint& joint, const NotchZone& zone, double sure) {
  const EdgeLine line = line_of(joint, zone);
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
  const bool level_block = high.adjusted - (-low.adjusted) < 1e-6;  // endless along this edge
  if (level_block) return t;
  t.from = std::min(t.from, -low.quantile(sure) - c);
  t.to = std::max(t.to, high.quantile(sure) + c);
  return t;
}

}  // namespace

NotchDepth notch_depth(const Trials& trials, const Joint& joint, const NotchZone& zone,
                       double sure) {
  Tally most, excess;
  for (int r = 0; r < trials.rooms(); ++r) {
    const Reaches reaches = reaches_in(trials, joint, zone, r);
    most.add(r, reaches.most);
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

Polygon square_notch(const Trials&, const Joint& joint, const NotchZone& zone,
                     const NotchDepth& depth) {
  const EdgeLine line = line_of(joint, zone);
  const Vec2 in = left_of(line.way);  // the outline runs anticlockwise
  const Vec2 a = line.point(depth.t.from), b = line.point(depth.t.to);
  return {a - kOutside * in, b - kOutside * in, b + depth.depth * in, a + depth.depth * in};
}

Regions profile_notch(const Trials& trials, const Joint& joint, const NotchZone& zone,
                      const NotchDepth& depth) {
  const EdgeLine line = line_of(joint, zone);
  const Vec2 in = left_of(line.way);
  std::vector<Polygon> cells;
  const auto add = [&](Stretch t, Stretch deep) {
    const Vec2 a = line.point(t.from), b = line.point(t.to);
    cells.push_back(
        grown(hull_of({a - kOutside * in, b - kOutside * in, b + (deep.to + depth.deeper) * in,
                       a + (deep.from + depth.deeper) * in}),
              joint.how->clearance.mm));
  };
  int before = -1;
  double deep_before = kNone;
  for (int s = 0; s < static_cast<int>(joint.spots.size()); ++s) {
    if (!in_zone(joint.spots[s], zone)) continue;
    const double deep =
        std::max(reach_over(trials, joint, 2 * s, 0), reach_over(trials, joint, 2 * s + 1, 0));
    if (deep == kNone) continue;
    const double t = joint.spots[s].t;
    const double start =
        before < 0 ? std::min(t, depth.t.from + joint.how->clearance.mm) : joint.spots[before].t;
    add({start, t}, {before < 0 ? deep : deep_before, deep});
    before = s;
    deep_before = deep;
  }
  if (before >= 0)
    add({joint.spots[before].t,
         std::max(joint.spots[before].t, depth.t.to - joint.how->clearance.mm)},
        {deep_before, deep_before});
  return unite(cells);
}

Polygon face_notch(const Trials& trials, const Joint& joint, const NotchZone& zone, double sure) {
  Tally shift;
  const BlockHere& there = trials.views[0].blocks(joint.meets.wall)[zone.blocks.front()];
  const auto corner = [&](int r) {
    const SiteView& view = trials.views[r];
    const WallShape& wall = view.shape().walls[joint.meets.wall];
    const BlockHere& here = view.blocks(joint.meets.wall)[zone.blocks.front()];
    const double a = std::abs(there.a_from) < 1e8 ? here.a_from : 0;
    const Vec2 p = wall.room_from_wall(a, 0);
    const Vec3 q = trials.placings[r].frames[joint.piece].piece_from_room(
        {p.x, p.y, view.z_of(here.block->height_to, joint.meets.wall, a)});
    return Vec2{q.x, q.y};
  };
  const Vec2 adjusted = corner(0);
  for (int r = 0; r < trials.rooms(); ++r) shift.add(r, norm(corner(r) - adjusted));
  const double more = shift.quantile(sure);
  const Vec2 low = zone.box.low - Vec2{more, more}, high = zone.box.high + Vec2{more, more};
  return {low, {high.x, low.y}, high, {low.x, high.y}};
}

Regions part_notch(const Trials& trials, const Joint& joint, int part, double sure) {
  const Body& body = trials.layout.scene.bodies[part];
  const double thickness = trials.layout.scene.pieces[joint.piece].thickness;
  Tally shift;
  const auto at = [&](int r) {
    const auto& frames = trials.placings[r].frames;
    return frames[joint.piece].piece_from_room(frames[part].at);
  };
  const Vec3 adjusted = at(0);
  for (int r = 0; r < trials.rooms(); ++r) {
    const Vec3 d = at(r) - adjusted;
    shift.add(r, std::hypot(d.x, d.y));
  }
  const Frame &own = trials.placings[0].frames[joint.piece],
              &other = trials.placings[0].frames[part];
  std::vector<Polygon> cells;
  for (const Polygon& cell : body.cells) {
    std::vector<Vec3> corners;
    for (double w : {0.0, body.thickness})
      for (Vec2 p : cell)
        corners.push_back(own.piece_from_room(other.room_from_piece({p.x, p.y, w})));
    // The section within the thickness: corners inside, and every chord where it crosses a face.
    Polygon points;
    for (Vec3 p : corners) {
      if (p.z >= 0 && p.z <= thickness) points.push_back({p.x, p.y});
      for (Vec3 q : corners)
        for (double z : {0.0, thickness})
          if ((p.z < z) != (q.z < z)) {
            const double t = (z - p.z) / (q.z - p.z);
            points.push_back({p.x + t * (q.x - p.x), p.y + t * (q.y - p.y)});
          }
    }
    const Polygon hull = hull_of(std::move(points));
    if (hull.size() >= 3)
      cells.push_back(grown(hull, joint.how->clearance.mm + shift.quantile(sure)));
  }
  return unite(cells);
}

}  // namespace nook
