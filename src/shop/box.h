// The smallest box round a piece or a group, as carried: what goes through a door.
#pragma once

#include <string>
#include <vector>

#include "base/vector.h"
#include "design/piece.h"

namespace nook {

/// length >= width >= thickness, mm.
struct Box {
  double length = 0, width = 0, thickness = 0;
};

/// A rectangle's sides: the unit direction of the long one, and both lengths in mm.
struct Rectangle {
  Vec2 direction;
  double length = 0, width = 0;  // length >= width
};

/// The rectangle of least width round some points; one of its sides lies on their hull.
Rectangle least_rectangle(const std::vector<Vec2>& points);

/// The box round a prism: the least rectangle round its outline by its thickness.
Box box_of(const Polygon& outline, double thickness);

/// One piece ready to be carried: its outline with wild edges on, in its nominal place.
struct CarriedPiece {
  std::string name;
  Frame frame;
  Polygon outline;
  double thickness = 0;
};

/// The corners of a piece in the nominal room frame: those of its back, then those of its front.
std::vector<Vec3> corners_of(const CarriedPiece& piece);

/// Boxes round pieces joined as they stand, one for each way to lay the box along them: the frame
/// of each piece, and upright over the least rectangle in plan. Same boxes are given once.
std::vector<Box> boxes_of(const std::vector<CarriedPiece>& joined);

}  // namespace nook
