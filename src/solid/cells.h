// Outlines cut into convex cells, and convex cells grown by a clearance.
#pragma once

#include <vector>

#include "solid/polygon.h"

namespace nook {

/// The region as convex cells that meet in whole edges, anticlockwise; few, not fewest.
/// Requires: rings that do not cross. Points that coincide are merged.
std::vector<Polygon> convex_cells(const Region& region);

/// The smallest convex outline round the points, anticlockwise, without points on its sides.
Polygon hull_of(Polygon points);

/// A convex outline grown by a clearance all round: the sum with a 16-sided outline drawn round the
/// circle, so it is 0 to 2 % of the clearance too much and never too little.
Polygon grown(const Polygon& convex, double clearance);

}  // namespace nook
