// The area that outlines cover, nothing rounded: CGAL's polygon sets on the coordinates as they
// are.
#include <CGAL/Boolean_set_operations_2.h>
#include <CGAL/Exact_predicates_exact_constructions_kernel.h>
#include <CGAL/Polygon_set_2.h>

#include "bench/wall_and_panel.h"

namespace nook::bench {
namespace {

using Kernel = CGAL::Exact_predicates_exact_constructions_kernel;
using Ring = CGAL::Polygon_2<Kernel>;

Ring ring_of(const Polygon& polygon) {
  Ring ring;
  for (const Vec2 p : polygon) ring.push_back({p.x, p.y});
  return ring;
}

}  // namespace

double exact_area(const std::vector<Polygon>& pieces, const Polygon& outline) {
  std::vector<Ring> rings;
  for (const Polygon& piece : pieces)
    if (Ring ring = ring_of(piece); ring.is_simple() && ring.area() > 0) rings.push_back(ring);
  CGAL::Polygon_set_2<Kernel> set;
  set.join(rings.begin(), rings.end());
  set.intersection(ring_of(outline));
  std::vector<CGAL::Polygon_with_holes_2<Kernel>> shapes;
  set.polygons_with_holes(std::back_inserter(shapes));
  Kernel::FT sum = 0;
  for (const auto& shape : shapes) {
    sum += shape.outer_boundary().area();
    for (const Ring& hole : shape.holes()) sum += hole.area();  // clockwise: below 0
  }
  return CGAL::to_double(sum.exact());
}

}  // namespace nook::bench
