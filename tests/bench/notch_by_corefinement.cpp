// The notch by CGAL's corefinement of two closed meshes.
#include <CGAL/Polygon_mesh_processing/corefinement.h>

#include "bench/mesh.h"

namespace nook::bench {

Shadow notch_by_corefinement(const WallAndPanel& input) {
  Mesh wall = mesh_of(wall_solid(input)), panel = mesh_of(panel_solid(input)), shared;
  if (!CGAL::Polygon_mesh_processing::corefine_and_compute_intersection(wall, panel, shared))
    return {};
  return shadow_of(shared);
}

}  // namespace nook::bench
