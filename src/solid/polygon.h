// Plain measures of outlines in double: area, inside or outside, distance to the border.
#pragma once

#include <vector>

#include "base/vector.h"

namespace nook {

using Regions = std::vector<Region>;

/// Positive for an anticlockwise ring.
double signed_area(const Polygon& ring);
/// Outlines less holes.
double area(const Regions& regions);

/// The same, whatever order it was found in: each ring from its lowest point on (the left one of
/// two), holes and regions by their first points from left to right.
Regions in_order(Regions regions);

/// Whether a point is in the region; one within 1e-6 mm of the border counts as inside.
bool contains(const Region& region, Vec2 point);
/// The least distance of a point to the border of a region, holes counted; 0 on it.
double border_distance(const Region& region, Vec2 point);
double segment_distance(Vec2 a, Vec2 b, Vec2 point);

/// Where a line p + s d (d a unit) runs inside the region: pairs of s, sorted, touching ones
/// joined.
struct Stretch {
  double from = 0, to = 0;
};
std::vector<Stretch> inside(const Region& region, Vec2 p, Vec2 d);

struct Box2 {
  Vec2 low, high;
};
Box2 box_of(const Polygon& ring);

}  // namespace nook
