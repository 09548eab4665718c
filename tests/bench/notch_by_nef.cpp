// The notch by CGAL's Nef polyhedra.
#include <CGAL/Exact_predicates_exact_constructions_kernel.h>
#include <CGAL/Nef_polyhedron_3.h>
#include <CGAL/Surface_mesh.h>
#include <CGAL/boost/graph/convert_nef_polyhedron_to_polygon_mesh.h>

#include "bench/wall_and_panel.h"

namespace nook::bench {
namespace {

using Kernel = CGAL::Exact_predicates_exact_constructions_kernel;
using Mesh = CGAL::Surface_mesh<Kernel::Point_3>;
using Nef = CGAL::Nef_polyhedron_3<Kernel>;

Nef nef_of(const Solid& solid) {
  Mesh mesh;
  std::vector<Mesh::Vertex_index> at;
  for (const Vec3& p : solid.points) at.push_back(mesh.add_vertex({p.x, p.y, p.z}));
  for (const auto& t : solid.triangles) mesh.add_face(at[t[0]], at[t[1]], at[t[2]]);
  return Nef(mesh);
}

}  // namespace

Shadow notch_by_nef(const WallAndPanel& input) {
  const Nef common = nef_of(wall_solid(input)) * nef_of(panel_solid(input));
  Mesh shared;
  CGAL::convert_nef_polyhedron_to_polygon_mesh(common, shared, true);
  Shadow shadow;
  for (const auto face : shared.faces()) {
    Polygon points;
    for (const auto vertex : shared.vertices_around_face(shared.halfedge(face))) {
      const auto& p = shared.point(vertex);
      points.push_back({CGAL::to_double(p.y()), CGAL::to_double(p.z())});
    }
    shadow.push_back(std::move(points));
  }
  return shadow;
}

}  // namespace nook::bench
