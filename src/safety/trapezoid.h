// A region cut into trapezoids between the uprights through its corners: quick, and many.
#pragma once

#include <vector>

#include "base/vector.h"

namespace nook::safe {

/// Convex cells that cover the region, holes left out, anticlockwise; neighbors share uprights. A
/// ring may run either way. Requires: rings that do not cross.
std::vector<Polygon> trapezoids_of(const Region& region);

}  // namespace nook::safe
