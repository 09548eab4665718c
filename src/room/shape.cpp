// Surfaces and corners of one concrete room.
#include "room/shape.h"

#include <algorithm>

#include "base/invariant.h"

namespace nook {
namespace {

double fading(double proud, double reach, double distance) {
  return reach > 0 && distance < reach ? proud * (1 - std::max(distance, 0.0) / reach) : 0;
}

constexpr int kCornerRounds = 30;
constexpr double kCornerStep = 1e-8;  // mm; of the last round, whose error is 1 % of it

// The point `o1` out of one base line and `o2` out of the other.
Vec2 crossing(const WallShape& left, double o1, const WallShape& right, double o2) {
  const Vec2 origin = right.start;
  const double det = cross(left.out, right.out);
  const double r1 = o1 + dot(left.start - origin, left.out);
  return origin + Vec2{(r1 * right.out.y - o2 * left.out.y) / det,
                       (o2 * left.out.x - r1 * right.out.x) / det};
}

}  // namespace

double WallShape::mud_at(double a, double z) const {
  return fading(buildup_proud, buildup_reach, a - corner_drift * z) +
         fading(far_buildup_proud, far_buildup_reach, length - a - far_corner_drift * z);
}

Vec3 WallShape::point(double a, double z) const {
  const Vec2 p = room_from_wall(a, out_at(a, z));
  return {p.x, p.y, z};
}

double LevelSurface::z(Vec2 p) const {
  const double rest = field.basis ? field.at(field_from_room(p)) - field.at({0, 0}) : 0;
  return offset + dot(slope, p) + rest;
}

Vec2 RoomShape::corner_at(int k, double z) const {
  require(k >= 0 && k + 1 < static_cast<int>(walls.size()), "a corner joins two walls");
  const WallShape& left = walls[k];
  const WallShape& right = walls[k + 1];
  const WallRow left_row(left, z), right_row(right, z);
  Vec2 p = right.start;  // the base corner: right walls count from it
  // Each surface is nearly straight here: a round leaves at most its slope, some 1 %, of the step.
  for (int round = 0; round < kCornerRounds; ++round) {
    const double o1 = left_row.out_at(left.wall_from_room(p).x);
    const double o2 = right_row.out_at(right.wall_from_room(p).x);
    const Vec2 next = crossing(left, o1, right, o2);
    const double step = norm(next - p);
    p = next;
    if (step < kCornerStep) break;
  }
  return p;
}

double RoomShape::corner_along(int k, int wall, double z) const {
  return walls[wall].wall_from_room(corner_at(k, z)).x;
}

double RoomShape::base_along(int wall, double reading, double z, bool from_right) const {
  if (walls.size() < 2) return reading;
  if (wall == 0) return corner_along(0, 0, z) + reading;
  if (from_right) return corner_along(wall, wall, z) - reading;
  return corner_along(wall - 1, wall, z) + reading;
}

double RoomShape::read_along(int wall, double a, double z, bool from_right) const {
  if (walls.size() < 2) return a;
  if (wall == 0) return a - corner_along(0, 0, z);
  if (from_right) return corner_along(wall, wall, z) - a;
  return a - corner_along(wall - 1, wall, z);
}

}  // namespace nook
