// Surfaces and corners of one concrete room.
#include "room/shape.h"

#include <algorithm>

#include "base/invariant.h"

namespace nook {
namespace {

double fading(double proud, double reach, double distance) {
  return reach > 0 && distance < reach ? proud * (1 - std::max(distance, 0.0) / reach) : 0;
}

}  // namespace

double WallShape::out_at(double a, double z) const {
  return lean * z + field.at({a, z}) + fading(buildup_proud, buildup_reach, a) +
         fading(far_buildup_proud, far_buildup_reach, length - a);
}

Vec3 WallShape::point(double a, double z) const {
  const Vec2 p = room_from_wall(a, out_at(a, z));
  return {p.x, p.y, z};
}

Vec2 RoomShape::corner_at(int k, double z) const {
  require(k >= 0 && k + 1 < static_cast<int>(walls.size()), "a corner joins two walls");
  const WallShape& left = walls[k];
  const WallShape& right = walls[k + 1];
  Vec2 p = right.start;   // the base corner: right walls count from it
  // Each surface is nearly straight here; three rounds take the field's slope along the wall in.
  for (int round = 0; round < 4; ++round) {
    const double o1 = left.out_at(left.wall_from_room(p).x, z);
    const double o2 = right.out_at(right.wall_from_room(p).x, z);
    // p with dot(p - start, out) = o on both walls.
    const double det = cross(left.out, right.out);
    const double r1 = o1 + dot(left.start, left.out), r2 = o2 + dot(right.start, right.out);
    p = {(r1 * right.out.y - r2 * left.out.y) / det, (r2 * left.out.x - r1 * right.out.x) / det};
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
