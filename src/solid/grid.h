// The grid that outlines lie on, and which of them can have nothing in common there.
#pragma once

#include <vector>

#include "solid/polygon.h"

namespace nook {

/// Outlines are rounded to this grid on their way into a Boolean, and only there.
inline constexpr double kOutlineGrid = 0.001;  // mm; chosen, a hundredth of what a saw follows

/// Whether the boxes round two outlines, or round any two of both lists, are more than a grid step
/// apart: they share nothing then.
bool far_apart(const Polygon& a, const Polygon& b);
bool far_apart(const Regions& a, const Regions& b);
/// Those rings whose boxes are not far apart from every one of the regions.
std::vector<Polygon> near(const std::vector<Polygon>& rings, const Regions& regions);

}  // namespace nook
