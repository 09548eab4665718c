// Pieces are cut into convex cells, clipped to the slab and projected; the room is sampled.
#include "safety/sight.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "safety/trapezoid.h"
#include "solid/cells.h"

namespace nook::safe {
namespace {

constexpr double kRoomStep = 100;   // mm between the points taken of a surface; chosen
constexpr double kRoomDepth = 500;  // mm of wall, floor or ceiling drawn behind its face; chosen
constexpr double kFlat = 1e-9;      // a piece lies flat in the plane when its normal does; exact

Vec3 unit(Vec3 a) {
  return (1 / norm(a)) * a;
}

bool lies_flat(const Body& body, const Sight& sight) {
  return norm(cross(body.frame.w, sight.n)) < kFlat;
}

Region flat_shadow(const Body& body, const Sight& sight) {
  const auto ring = [&](const Polygon& polygon) {
    Polygon seen;
    for (Vec2 p : polygon) seen.push_back(sight.seen(body.frame.room_from_piece({p.x, p.y, 0})));
    if (dot(body.frame.w, sight.n) < 0) std::reverse(seen.begin(), seen.end());
    return seen;
  };
  Region region{ring(body.region.outline), {}};
  for (const Polygon& hole : body.region.holes) region.holes.push_back(ring(hole));
  return region;
}

// The points of a convex solid that lie on the near side of a depth. Crossings of all pairs of
// points lie inside it, so its outline comes out right.
std::vector<Vec3> clipped(const std::vector<Vec3>& points, double depth, double side) {
  std::vector<Vec3> kept;
  const auto over = [&](Vec3 p) { return side * (p.z - depth); };
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (over(points[i]) <= 0) kept.push_back(points[i]);
    for (std::size_t k = 0; k < i; ++k) {
      const double a = over(points[i]), b = over(points[k]);
      if ((a < 0 && b > 0) || (a > 0 && b < 0))
        kept.push_back(points[i] + (a / (a - b)) * (points[k] - points[i]));
    }
  }
  return kept;
}

// A cell of the outline, through the whole thickness, as points (s, t, depth).
std::vector<Vec3> solid_of(const Polygon& cell, const Body& body, const Sight& sight) {
  std::vector<Vec3> points;
  for (Vec2 p : cell)
    for (double w : {0.0, body.piece->thickness}) {
      const Vec3 at = body.frame.room_from_piece({p.x, p.y, w});
      const Vec2 seen = sight.seen(at);
      points.push_back({seen.x, seen.y, sight.depth(at)});
    }
  return points;
}

bool reaches(const Body& body, const Sight& sight, Slab slab) {
  const auto depths = solid_of(body.region.outline, body, sight);
  const auto by_depth = [](Vec3 a, Vec3 b) { return a.z < b.z; };
  const auto [low, high] = std::minmax_element(depths.begin(), depths.end(), by_depth);
  return low->z < slab.far && high->z > slab.near;
}

// The ring between a sampled face and the same face pushed `by` behind it.
Region behind(Polygon face, Vec2 by) {
  const Polygon front = face;
  for (auto p = front.rbegin(); p != front.rend(); ++p) face.push_back(*p + by);
  return {face, {}};
}

std::vector<double> steps(double low, double high) {
  const int count = std::max(1, static_cast<int>(std::ceil((high - low) / kRoomStep)));
  std::vector<double> at;
  for (int i = 0; i <= count; ++i) at.push_back(low + (high - low) * i / count);
  return at;
}

// Where a nearly straight function is 0, from a start nearby.
template <class Function>
double root(Function f, double from) {
  double a = from, b = from + 10, fa = f(a), fb = f(b);
  for (int round = 0; round < 6 && std::abs(fb) > 1e-9 && fa != fb; ++round) {
    const double c = b - fb * (b - a) / (fb - fa);
    a = b, fa = fb, b = c, fb = f(c);
  }
  return b;
}

Shadow wall_shadow(const WallShape& wall, int index, const Sight& sight, Window window) {
  const Vec3 out{wall.out.x, wall.out.y, 0};
  const double across = dot(sight.s, out), up = dot(sight.t, out);
  const bool along_t = std::abs(across) > std::abs(up);  // the face runs more or less along t
  Polygon face;
  double from = 0;
  for (double q :
       along_t ? steps(window.low.y, window.high.y) : steps(window.low.x, window.high.x)) {
    const auto spot = [&](double x) { return along_t ? Vec2{x, q} : Vec2{q, x}; };
    from = root([&](double x) { return before(wall, sight.room(spot(x))); }, from);
    face.push_back(spot(from));
  }
  const double in = along_t ? across : up;
  const double back = in > 0 ? -kRoomDepth : kRoomDepth;
  return {{Owner::Kind::wall, index}, behind(face, along_t ? Vec2{back, 0} : Vec2{0, back})};
}

Shadow level_shadow(const LevelSurface& surface, Owner owner, const Sight& sight, Window window) {
  Polygon face;
  double from = 0;
  for (double s : steps(window.low.x, window.high.x)) {
    const auto above = [&](double t) {
      const Vec3 p = sight.room({s, t});
      return p.z - surface.z({p.x, p.y});
    };
    from = root(above, from);
    face.push_back({s, from});
  }
  const double back = owner.kind == Owner::Kind::floor ? -kRoomDepth : kRoomDepth;
  return {owner, behind(face, {0, back})};
}

}  // namespace

Body body_of(const Piece& piece, const Frame& frame) {
  Body body{&piece, frame, {piece.drawn->outline, {}}, {}};
  for (const Cutout& cutout : piece.drawn->cutouts) body.region.holes.push_back(cutout.outline);
  body.cells = trapezoids_of(body.region);
  return body;
}

Sight sight_across(Vec3 at, Vec3 normal) {
  const Vec3 n = unit(normal);
  if (std::abs(n.z) > 1 - 1e-12) return {at, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
  const Vec3 t = unit(Vec3{0, 0, 1} - n.z * n);
  return {at, cross(t, n), t, n};
}

double before(const WallShape& wall, Vec3 p) {
  const Vec2 q = wall.wall_from_room({p.x, p.y});
  return q.y - wall.out_at(q.x, p.z);
}

std::vector<Region> shadows_of(const Body& body, const Sight& sight, Slab slab) {
  if (!reaches(body, sight, slab)) return {};
  if (lies_flat(body, sight)) return {flat_shadow(body, sight)};
  std::vector<Region> shadows;
  for (const Polygon& cell : body.cells) {
    Polygon seen;
    const auto solid = solid_of(cell, body, sight);
    for (Vec3 p : clipped(clipped(solid, slab.near, -1), slab.far, 1)) seen.push_back({p.x, p.y});
    const Polygon hull = hull_of(seen);
    if (hull.size() >= 3) shadows.push_back({hull, {}});
  }
  return shadows;
}

std::vector<Shadow> shadows_of(const RoomShape& room, const Sight& sight, Window window) {
  std::vector<Shadow> shadows;
  const double crosses = std::cos(std::numbers::pi / 6);
  for (int k = 0; k < static_cast<int>(room.walls.size()); ++k) {
    const WallShape& wall = room.walls[k];
    if (std::abs(dot(sight.n, {wall.out.x, wall.out.y, 0})) < crosses)
      shadows.push_back(wall_shadow(wall, k, sight, window));
  }
  if (std::abs(sight.n.z) > crosses) return shadows;
  shadows.push_back(level_shadow(room.floor, {Owner::Kind::floor, 0}, sight, window));
  if (room.ceiling)
    shadows.push_back(level_shadow(*room.ceiling, {Owner::Kind::ceiling, 0}, sight, window));
  return shadows;
}

}  // namespace nook::safe
