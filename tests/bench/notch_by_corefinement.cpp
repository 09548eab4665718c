// The notch by CGAL's corefinement of two closed meshes.
#include <CGAL/Exact_predicates_exact_constructions_kernel.h>
#include <CGAL/Polygon_mesh_processing/corefinement.h>
#include <CGAL/Polygon_mesh_processing/triangulate_faces.h>
#include <CGAL/Surface_mesh.h>

#include "bench/wall_and_panel.h"

namespace nook::bench {
namespace {

using Kernel = CGAL::Exact_predicates_exact_constructions_kernel;
using Mesh = CGAL::Surface_mesh<Kernel::Point_3>;
namespace processing = CGAL::Polygon_mesh_processing;

Mesh mesh_of(const Solid& solid) {
  Mesh mesh;
  std::vector<Mesh::Vertex_index> at;
  for (const Vec3& p : solid.points) at.push_back(mesh.add_vertex({p.x, p.y, p.z}));
  for (const auto& t : solid.triangles) mesh.add_face(at[t[0]], at[t[1]], at[t[2]]);
  return mesh;
}

}  // namespace

Shadow notch_by_corefinement(const WallAndPanel& input) {
  Mesh wall = mesh_of(wall_solid(input)), panel = mesh_of(panel_solid(input)), shared;
  if (!processing::corefine_and_compute_intersection(wall, panel, shared)) return {};
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
