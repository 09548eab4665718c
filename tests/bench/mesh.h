// Solids as CGAL's meshes and back to the shadow of their faces.
#pragma once

#include <CGAL/Exact_predicates_exact_constructions_kernel.h>
#include <CGAL/Surface_mesh.h>

#include "bench/wall_and_panel.h"

namespace nook::bench {

using Kernel = CGAL::Exact_predicates_exact_constructions_kernel;
using Mesh = CGAL::Surface_mesh<Kernel::Point_3>;

inline Mesh mesh_of(const Solid& solid) {
  Mesh mesh;
  std::vector<Mesh::Vertex_index> at;
  for (const Vec3& p : solid.points) at.push_back(mesh.add_vertex({p.x, p.y, p.z}));
  for (const auto& t : solid.triangles) mesh.add_face(at[t[0]], at[t[1]], at[t[2]]);
  return mesh;
}

/// The faces that look along the wall, in the panel's u and v: those that look back have the same
/// shadow.
inline Shadow shadow_of(const Mesh& mesh) {
  Shadow shadow;
  for (const auto face : mesh.faces()) {
    std::vector<Kernel::Point_2> corners;
    for (const auto vertex : mesh.vertices_around_face(mesh.halfedge(face)))
      corners.emplace_back(mesh.point(vertex).y(), mesh.point(vertex).z());
    if (CGAL::orientation(corners[0], corners[1], corners[2]) != CGAL::LEFT_TURN) continue;
    Polygon points;
    for (const auto& p : corners)
      points.push_back({CGAL::to_double(p.x()), CGAL::to_double(p.y())});
    shadow.push_back(std::move(points));
  }
  return shadow;
}

}  // namespace nook::bench
