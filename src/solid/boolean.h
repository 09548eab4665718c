// Union, intersection and difference of outlines, exact behind doubles-in, doubles-out.
#pragma once

#include <vector>

#include "solid/grid.h"

namespace nook {

// For all of them:
// 1. A ring may run either way; doubled points and rings without area are dropped; a ring that
//    crosses itself bounds what it winds round (non-zero).
// 2. The result is exact for the rounded rings; its points are told to 1e-15 of themselves, so its
//    area is right to 1e-12 of the input areas.
// 3. Outlines come anticlockwise, holes clockwise, each starting at its lowest leftmost point, in a
//    fixed order: the same input gives the same bytes.

/// Everything that any of the rings bounds.
Regions unite(const std::vector<Polygon>& rings);
Regions unite(const Regions& a, const Regions& b);
Regions intersect(const Regions& a, const Regions& b);
/// What any of the rings and `b` share: their union is not rounded in between.
Regions intersect(const std::vector<Polygon>& rings, const Regions& b);
/// `a` less `b`.
Regions subtract(const Regions& a, const Regions& b);

}  // namespace nook
