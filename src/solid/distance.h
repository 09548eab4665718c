// The least distance between two solids bounded by triangles.
#pragma once

#include <array>
#include <vector>

#include "base/vector.h"
#include "solid/polygon.h"

namespace nook {

using Triangle = std::array<Vec3, 3>;
using Mesh = std::vector<Triangle>;

/// The surface of a straight prism: `cells` (convex) from w = 0 to w = thickness, in u, v, w.
/// Inner walls between cells are part of it, which changes no distance from outside.
Mesh prism(const std::vector<Polygon>& cells, double thickness);

/// The least distance between two surfaces, mm; 0 where they touch or cross, good to 1e-9.
/// A surface wholly inside the other is not noticed. Empty meshes are infinitely far.
double distance(const Mesh& a, const Mesh& b);

}  // namespace nook
