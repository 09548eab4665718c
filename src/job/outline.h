// Outlines as typed: what makes one impossible, and circles as fine polygons.
#pragma once

#include <optional>
#include <vector>

#include "base/length.h"
#include "base/vector.h"

namespace nook {

/// Points nearer than this are one point, edges nearer touch (chosen: the grid of the exact
/// geometry).
inline constexpr double kSamePlaceMm = 0.001;

/// Two edges that touch or cross, by ring and number; ring_a <= ring_b.
struct EdgeMeeting {
  int ring_a = 0, edge_a = 0, ring_b = 0, edge_b = 0;
  friend auto operator<=>(const EdgeMeeting&, const EdgeMeeting&) = default;
};

/// Two edges that meet without being neighbors, or that are neighbors and double back; nothing
/// where every ring is simple and all are apart. Of several pairs the first that a sweep comes to.
/// Near-linear for outlines as drawn, quadratic at worst.
std::optional<EdgeMeeting> first_meeting(const std::vector<Polygon>& rings);

/// Positive where the ring runs anticlockwise.
double ring_area(const Polygon& ring);

/// Whether a point lies inside a simple ring (either direction). On the ring itself: either.
bool is_inside(const Polygon& ring, Vec2 point);

/// A circle as a polygon of corners on it, in number a multiple of 4 and at least 16, so many that
/// no chord strays more than 0.01 mm (chosen) from the arc. Starts at the right, anticlockwise,
/// symmetric to the last bit.
Polygon circle(Vec2 centre, double diameter);

}  // namespace nook
