// Outlines of notches before they are clipped: rectangles, profiles, boxes, sections of parts.
#include "fit/notch_shape.h"

#include <algorithm>
#include <cmath>

#include "fit/notch_edge.h"
#include "fit/touching.h"
#include "solid/boolean.h"
#include "solid/cells.h"

namespace nook {
namespace {

constexpr double kOutside = 50;  // mm that a notch runs out beyond the edge before it is clipped

// The profile as cells between neighboring spots of the zone, each grown by the clearance.
class Profile {
 public:
  Profile(const Joint& joint, const NotchZone& zone, const NotchDepth& depth)
      : line_(edge_line(joint, zone)), depth_(depth), clearance_(joint.how->clearance.mm) {}

  void add(double t, double deep) {
    const double from = fresh_ ? std::min(t, depth_.t.from + clearance_) : t_;
    add_cell({from, t}, {fresh_ ? deep : deep_, deep});
    fresh_ = false;
    t_ = t;
    deep_ = deep;
  }

  Regions whole() {
    if (!fresh_) add_cell({t_, std::max(t_, depth_.t.to - clearance_)}, {deep_, deep_});
    return unite(cells_);
  }

 private:
  void add_cell(Stretch t, Stretch deep) {
    const Vec2 a = line_.point(t.from), b = line_.point(t.to), in = line_.inwards();
    cells_.push_back(
        grown(hull_of({a - kOutside * in, b - kOutside * in, b + (deep.to + depth_.deeper) * in,
                       a + (deep.from + depth_.deeper) * in}),
              clearance_));
  }

  EdgeLine line_;
  const NotchDepth& depth_;
  double clearance_;
  bool fresh_ = true;
  double t_ = 0, deep_ = 0;
  std::vector<Polygon> cells_;
};

// How far a spot of the room moves on the piece from room to room, in a share `sure` of them.
template <class Spot>
double stray(const Trials& trials, double sure, Spot spot) {
  const Vec2 adjusted = spot(0);
  Tally tally;
  for (int r = 0; r < trials.rooms(); ++r) tally.add(r, norm(spot(r) - adjusted));
  return tally.quantile(sure);
}

// A convex cell's corners within the thickness and where its chords cross the faces.
Polygon section_of(const std::vector<Vec3>& corners, double thickness) {
  double low = 1e300, high = -1e300;
  for (Vec3 p : corners) low = std::min(low, p.z), high = std::max(high, p.z);
  if (high < kTouching || low > thickness - kTouching) return {};
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
  return hull_of(std::move(points));
}

std::vector<Vec3> corners_on(const Frame& own, const Frame& other, const Polygon& cell,
                             double thickness) {
  std::vector<Vec3> corners;
  for (double w : {0.0, thickness})
    for (Vec2 p : cell)
      corners.push_back(own.piece_from_room(other.room_from_piece({p.x, p.y, w})));
  return corners;
}

}  // namespace

Polygon square_notch(const Joint& joint, const NotchZone& zone, const NotchDepth& depth) {
  const EdgeLine line = edge_line(joint, zone);
  const Vec2 in = line.inwards(), a = line.point(depth.t.from), b = line.point(depth.t.to);
  return {a - kOutside * in, b - kOutside * in, b + depth.depth * in, a + depth.depth * in};
}

Regions profile_notch(const Trials& trials, const Joint& joint, const NotchZone& zone,
                      const NotchDepth& depth) {
  Profile profile(joint, zone, depth);
  Overhang overhang(trials, joint, 0);
  for (int s = 0; s < static_cast<int>(joint.spots.size()); ++s) {
    if (!in_zone(joint.spots[s], zone)) continue;
    const double deep = std::max(overhang.reach(2 * s), overhang.reach(2 * s + 1));
    if (deep > kNoReach) profile.add(joint.spots[s].t, deep);
  }
  return profile.whole();
}

Polygon face_notch(const Trials& trials, const Joint& joint, const NotchZone& zone, double sure) {
  const int block = zone.blocks.front(), wall = joint.meets.wall;
  const bool endless = trials.views[0].blocks(wall)[block].a_from < -1e8;
  const double more = stray(trials, sure, [&](int r) {
    const BlockHere& here = trials.views[r].blocks(wall)[block];
    const double a = endless ? 0 : here.a_from;
    const Vec2 p = trials.views[r].shape().walls[wall].room_from_wall(a, 0);
    const Vec3 q = trials.placings[r].frames[joint.piece].piece_from_room(
        {p.x, p.y, trials.views[r].z_of(here.block->height_to, wall, a)});
    return Vec2{q.x, q.y};
  });
  const Vec2 low = zone.box.low - Vec2{more, more}, high = zone.box.high + Vec2{more, more};
  return {low, {high.x, low.y}, high, {low.x, high.y}};
}

Regions part_notch(const Trials& trials, const Joint& joint, int part, double sure) {
  const Body& body = trials.layout.scene.bodies[part];
  const double more = stray(trials, sure, [&](int r) {
    const auto& frames = trials.placings[r].frames;
    const Vec3 q = frames[joint.piece].piece_from_room(frames[part].at);
    return Vec2{q.x, q.y};
  });
  const auto& frames = trials.placings[0].frames;
  std::vector<Polygon> cells;
  for (const Polygon& cell : body.cells) {
    const Polygon section =
        section_of(corners_on(frames[joint.piece], frames[part], cell, body.thickness),
                   trials.layout.scene.pieces[joint.piece].thickness);
    if (section.size() >= 3) cells.push_back(grown(section, joint.how->clearance.mm + more));
  }
  return unite(cells);
}

}  // namespace nook
