// One concrete room: where its walls, floor, ceiling and level line are. The adjusted room is one;
// so is every draw from what the readings leave open.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/vector.h"
#include "room/field.h"

// Frame: see room/survey.h. Everything in millimeters and radians, room frame.

namespace nook {

/// One wall: base line + lean x z + field + build-up.
struct WallShape {
  std::string name;
  Vec2 start;         // the base line where along = 0: at the corner the wall counts from
  Vec2 along;         // unit, away from that corner
  Vec2 out;           // unit, into the room
  double length = 0;  // of the base line, corner to its far end (assumed where nothing says)
  double lean = 0;    // mm out per mm up
  Field field;        // of (along - field_start, z)
  double field_start = 0;
  double buildup_proud = 0, buildup_reach = 0;          // at along = 0
  double far_buildup_proud = 0, far_buildup_reach = 0;  // at along = length
  double corner_drift = 0, far_corner_drift = 0;  // mm along per mm up of the corners without mud

  /// How far the surface stands out of the base line's upright plane, at base-line distance `a`.
  double out_at(double a, double z) const { return lean * z + hump_at(a, z) + mud_at(a, z); }
  /// Its hump (+) or hollow (-) there.
  double hump_at(double a, double z) const { return field.at({a - field_start, z}); }
  /// The mud built up in its corners: fades out over its reach from the corner at that height.
  double mud_at(double a, double z) const;
  /// The surface point there.
  Vec3 point(double a, double z) const;
  /// Base-line coordinates (along, out) of a point in plan.
  Vec2 wall_from_room(Vec2 p) const { return {dot(p - start, along), dot(p - start, out)}; }
  Vec2 room_from_wall(double a, double o) const { return start + a * along + o * out; }
};

/// A wall along one height: `out_at` there, sooner where it is asked often. Requires: the wall
/// outlives it.
class WallRow {
 public:
  WallRow(const WallShape& wall, double z) : wall_(wall), z_(z), field_(wall.field, z) {}
  double out_at(double a) const {
    return wall_.lean * z_ + field_.at(a - wall_.field_start) + wall_.mud_at(a, z_);
  }

 private:
  const WallShape& wall_;
  double z_;
  FieldRow field_;
};

/// A nearly level surface: z = offset + slope . (x, y) + field(u, v) - field(0, 0), where u runs
/// along `field_axis` and v to its left.
struct LevelSurface {
  double offset = 0;
  Vec2 slope;
  Field field;
  Vec2 field_axis{1, 0};

  double z(Vec2 p) const;
  /// The point in the field's own axes.
  Vec2 field_from_room(Vec2 p) const { return {dot(p, field_axis), cross(field_axis, p)}; }
};

struct RoomShape {
  std::vector<WallShape> walls;  // from left to right; wall k and k + 1 share corner k
  LevelSurface floor;            // offset 0: z = 0 is the floor at the origin
  std::optional<LevelSurface> ceiling;
  std::optional<double> line_z;  // of the level line

  /// Where the surfaces of walls k and k + 1 meet at height z, in plan.
  Vec2 corner_at(int k, double z) const;
  /// The base-line distance of that real corner on wall `wall` (k or k + 1), counted from
  /// wall.start.
  double corner_along(int k, int wall, double z) const;
  /// Base-line distance `a` for a reading `along` from the real corner at its own height z:
  /// readings follow the surface from where the two surfaces meet. Wall 0 counts from corner 0,
  /// wall k > 0 from corner k - 1; with `from_right` a wall counts back from corner k.
  double base_along(int wall, double reading, double z, bool from_right = false) const;
  /// The reading that a tape from the real corner would give at base-line distance a.
  double read_along(int wall, double a, double z, bool from_right = false) const;
};

}  // namespace nook
