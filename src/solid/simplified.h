// Outlines with fewer points.
#pragma once

#include "base/vector.h"

namespace nook {

/// The outline without points that stray no more than `stray` from the line of those kept (Douglas
/// and Peucker 1973). Its first point and the one furthest from it are always kept.
Polygon simplified(const Polygon& outline, double stray);

}  // namespace nook
