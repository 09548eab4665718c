// The same Booleans by another library, for comparison only.
#pragma once

#include "solid/polygon.h"

namespace nook::twin {

enum class Operation { unite, intersect, subtract };

/// The area of the result by GEOS, mm^2. Requires: rings that do not cross.
double area_by_geos(const Regions& a, const Regions& b, Operation operation);

}  // namespace nook::twin
