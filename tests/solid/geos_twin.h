// The same Booleans by another library, for comparison only.
#pragma once

#include "solid/polygon.h"

namespace nook::twin {

enum class Operation { unite, intersect, subtract };

/// The area of the result by GEOS, mm^2. Requires: rings that do not cross.
double area_by_geos(const Regions& a, const Regions& b, Operation operation);

/// The same of what any of the rings bounds.
double area_united_by_geos(const std::vector<Polygon>& rings);

}  // namespace nook::twin
