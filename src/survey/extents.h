// How far walls, floor and ceiling reach, for their fields.
#pragma once

#include "survey/room_model.h"

namespace nook {

/// A rectangle.
struct Extent {
  Vec2 low, high;
};

/// Of wall `wall`: along from its start (a wall between two corners: of this length), and z.
/// Alike for a room and its mirror image.
Extent wall_extent(const Survey& survey, int wall, double length);
/// Of floor and ceiling, in the axes of their fields. Requires: unknowns of walls with first
/// values.
Extent level_extent(const RoomModel& model);

/// The farthest place that anything on a wall was read at, from the corner it counts from, mm.
double farthest_on(const Survey& survey, int wall);

}  // namespace nook
