// The notch by CGAL's Nef polyhedra.
#include <CGAL/Nef_polyhedron_3.h>
#include <CGAL/boost/graph/convert_nef_polyhedron_to_polygon_mesh.h>

#include "bench/mesh.h"

namespace nook::bench {

Shadow notch_by_nef(const WallAndPanel& input) {
  using Nef = CGAL::Nef_polyhedron_3<Kernel>;
  const Nef common = Nef(mesh_of(wall_solid(input))) * Nef(mesh_of(panel_solid(input)));
  Mesh shared;
  CGAL::convert_nef_polyhedron_to_polygon_mesh(common, shared, true);
  return shadow_of(shared);
}

}  // namespace nook::bench
