// All edges in one exact sweep (CGAL's arrangements; Wein, Berberich, Fogel, Halperin et al.), then
// how often each face is wound round says what is inside.
#include "solid/boolean.h"

#include <CGAL/Arr_curve_data_traits_2.h>
#include <CGAL/Arr_extended_dcel.h>
#include <CGAL/Arr_segment_traits_2.h>
#include <CGAL/Arrangement_2.h>
#include <CGAL/Exact_predicates_exact_constructions_kernel.h>
#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Polygon_2.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace nook {
namespace {

using Kernel = CGAL::Exact_predicates_exact_constructions_kernel;
using Number = Kernel::FT;
using Point = Kernel::Point_2;
using Ring = std::vector<Point>;
// Whole numbers in double: exact questions are cheap while nothing new is made of them.
using WholeKernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using WholeRing = CGAL::Polygon_2<WholeKernel>;

// The rings of an operation by what they are.
enum Role { outline_a, hole_a, outline_b, hole_b };
// How often the rings of each role wind round a face; of an edge: how much more on its left than on
// its right where it runs towards greater x, straight up if it is upright.
using Winding = std::array<int, 4>;

constexpr int kMayCross = -1;

struct Bound {
  Winding winding{};
  int part = kMayCross;  // edges of one part meet only where both have a corner
};

// Of two edges where they lie on each other.
struct Together {
  Bound operator()(Bound a, const Bound& b) const {
    for (std::size_t k = 0; k < a.winding.size(); ++k) a.winding[k] += b.winding[k];
    a.part = kMayCross;
    return a;
  }
};

using Segment = CGAL::Arr_segment_2<Kernel>;
using Bounds = CGAL::Arr_curve_data_traits_2<CGAL::Arr_segment_traits_2<Kernel>, Bound, Together>;

// Where a point lies about a segment's line.
CGAL::Orientation side(const Segment& s, const Point& p) {
  if (CGAL::identical(s.left(), p) || CGAL::identical(s.right(), p)) return CGAL::COLLINEAR;
  return Kernel().orientation_2_object()(s.left(), s.right(), p);
}

// How two segments meet, as far as their ends tell it. An end that lies on the other need not be
// worked out as a crossing, nor be found equal to it later.
struct Meeting {
  bool apart = false;
  const Point* end = nullptr;  // of one, on the other
};
Meeting meeting_of(const Segment& a, const Segment& b) {
  const auto a1 = side(b, a.left()), a2 = side(b, a.right());
  if (a1 == a2) return {a1 != CGAL::COLLINEAR};
  const auto b1 = side(a, b.left()), b2 = side(a, b.right());
  if (b1 == b2) return {true};
  if (a1 == CGAL::COLLINEAR) return {false, &a.left()};
  if (a2 == CGAL::COLLINEAR) return {false, &a.right()};
  if (b1 == CGAL::COLLINEAR) return {false, &b.left()};
  if (b2 == CGAL::COLLINEAR) return {false, &b.right()};
  return {};
}

// Does not look for crossings within a part, and knows a point again without working it out.
struct Traits : Bounds {
  struct Compare_xy_2 {
    CGAL::Comparison_result operator()(const Point& a, const Point& b) const {
      return CGAL::identical(a, b) ? CGAL::EQUAL : Kernel().compare_xy_2_object()(a, b);
    }
  };
  Compare_xy_2 compare_xy_2_object() const { return {}; }
  struct Intersect_2 : Bounds::Intersect_2 {
    using Bounds::Intersect_2::Intersect_2;
    template <class Output>
    Output operator()(const X_monotone_curve_2& a, const X_monotone_curve_2& b, Output out) const {
      if (a.data().part != kMayCross && a.data().part == b.data().part) return out;
      const auto [apart, end] = meeting_of(a, b);
      if (apart) return out;
      if (end) return *out++ = std::pair<Point, unsigned>(*end, 1), out;
      return Bounds::Intersect_2::operator()(a, b, out);
    }
  };
  Intersect_2 intersect_2_object() const { return Intersect_2(*this); }
};

struct Unseen {};
struct Seen {
  bool seen = false;
};
struct Place {
  bool known = false;
  Winding winding{};
  int shape = -1;  // index of the connected shape it lies in; -1 = outside
};

using Edge = Traits::X_monotone_curve_2;
using Plane = CGAL::Arrangement_2<Traits, CGAL::Arr_extended_dcel<Traits, Unseen, Seen, Place>>;
using Face = Plane::Face_handle;
using Halfedge = Plane::Halfedge_handle;

bool in_a(const Winding& w) {
  return w[outline_a] != 0 && w[hole_a] == 0;
}
bool in_b(const Winding& w) {
  return w[outline_b] != 0 && w[hole_b] == 0;
}

// Goes from face to face: on over each side that `on` says yes to, with the face beyond it.
template <class On>
void walk_from(Face first, On on) {
  std::vector<Face> open{first};
  while (!open.empty()) {
    const Face face = open.back();
    open.pop_back();
    const auto around = [&](Plane::Ccb_halfedge_circulator side) {
      const auto last = side;
      do
        if (on(Halfedge(side), side->twin()->face())) open.push_back(side->twin()->face());
      while (++side != last);
    };
    for (auto c = face->outer_ccbs_begin(); c != face->outer_ccbs_end(); ++c) around(*c);
    for (auto c = face->inner_ccbs_begin(); c != face->inner_ccbs_end(); ++c) around(*c);
  }
}

// From the face without end inwards.
void wind(Plane& plane) {
  plane.unbounded_face()->data().known = true;
  walk_from(plane.unbounded_face(), [](Halfedge side, Face next) {
    if (next->data().known) return false;
    Winding winding = side->face()->data().winding;
    const int sign = side->direction() == CGAL::ARR_LEFT_TO_RIGHT ? -1 : 1;
    for (std::size_t k = 0; k < winding.size(); ++k)
      winding[k] += sign * side->curve().data().winding[k];
    next->data() = {true, winding};
    return true;
  });
}

void overlay(const std::vector<Edge>& edges, Plane& plane) {
  CGAL::insert(plane, edges.begin(), edges.end());
  wind(plane);
}

// Numbers the shapes: faces inside that share an edge are of one. How many there are.
template <class Inside>
int number_shapes(Plane& plane, Inside inside) {
  int shapes = 0;
  const auto is_new = [&](Face f) { return f->data().shape < 0 && inside(f->data().winding); };
  for (auto f = plane.faces_begin(); f != plane.faces_end(); ++f) {
    if (!is_new(f)) continue;
    f->data().shape = shapes;
    walk_from(f, [&](Halfedge, Face next) {
      if (!is_new(next)) return false;
      next->data().shape = shapes;
      return true;
    });
    ++shapes;
  }
  return shapes;
}

bool is_border(Halfedge side) {
  return side->face()->data().shape >= 0 && side->twin()->face()->data().shape < 0;
}

// The border goes on round the inside of the corner it comes to.
Halfedge after(Halfedge side) {
  side = side->next();
  while (!is_border(side)) side = side->twin()->next();
  return side;
}

Ring border_from(const Halfedge first) {
  Ring ring;
  Halfedge side = first;
  do {
    side->data().seen = true;
    ring.push_back(side->source()->point());
    side = after(side);
  } while (side != first);
  return ring;
}

// One connected shape: its outline anticlockwise, then its holes clockwise.
using Shape = std::vector<Ring>;

// The outline has the leftmost point of all.
void put_outline_first(Shape& shape) {
  const auto leftmost = [](const Ring& r) { return *std::min_element(r.begin(), r.end()); };
  for (std::size_t i = 1; i < shape.size(); ++i)
    if (leftmost(shape[i]) < leftmost(shape[0])) std::swap(shape[i], shape[0]);
}

// What the edges bound where `inside` says so of a face's winding.
template <class Inside>
std::vector<Shape> shapes_of(const std::vector<Edge>& edges, Inside inside) {
  Plane plane;
  overlay(edges, plane);
  std::vector<Shape> shapes(number_shapes(plane, inside));
  for (auto e = plane.halfedges_begin(); e != plane.halfedges_end(); ++e)
    if (!e->data().seen && is_border(e)) shapes[e->face()->data().shape].push_back(border_from(e));
  for (Shape& shape : shapes) put_outline_first(shape);
  return shapes;
}

double on_grid(double x) {
  return std::round(x / kOutlineGrid);
}

// In grid steps, so that every coordinate going in is a whole number, and turned a quarter, so that
// the sweep goes up: the cells of walls lie one over the other and seldom meet on its way. Doubled
// points and spikes of
// no width are left out.
WholeRing ring_of(const Polygon& polygon) {
  std::vector<WholeKernel::Point_2> points;
  for (Vec2 p : polygon) {
    const WholeKernel::Point_2 next(on_grid(p.y), -on_grid(p.x));
    if (points.empty() || points.back() != next) points.push_back(next);
  }
  while (points.size() > 1 && points.back() == points.front()) points.pop_back();
  return WholeRing(points.begin(), points.end());
}

// An edge of a ring, and whether the ring runs along it towards greater x (straight up counts so).
struct Directed {
  Segment segment;
  int way;  // 1 or -1
};

std::vector<Directed> directed(const WholeRing& ring) {
  std::vector<Point> points;
  points.reserve(ring.size());
  for (const auto& p : ring) points.emplace_back(p.x(), p.y());
  std::vector<Directed> edges;
  edges.reserve(ring.size());
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Point &from = points[i], &to = points[(i + 1) % points.size()];
    edges.push_back({Segment(from, to), from < to ? 1 : -1});
  }
  return edges;
}

// Rings that wind once round what they bound, outlines anticlockwise and holes clockwise, and do
// not cross: no part takes back what another winds round.
using Part = std::vector<Directed>;

void add_part(const Part& part, Role role, std::vector<Edge>& edges) {
  Bound bound{{}, static_cast<int>(edges.size())};
  for (const Directed& edge : part) {
    bound.winding[role] = edge.way;
    edges.emplace_back(edge.segment, bound);
  }
}

// What the edges of outlines bound together.
Part united(const std::vector<Edge>& edges) {
  Plane plane;
  overlay(edges, plane);
  Part part;
  for (auto e = plane.halfedges_begin(); e != plane.halfedges_end(); ++e)
    if (in_a(e->face()->data().winding) && !in_a(e->twin()->face()->data().winding))
      part.push_back({e->curve(), e->direction() == CGAL::ARR_LEFT_TO_RIGHT ? 1 : -1});
  return part;
}

Part part_of(const Polygon& polygon) {
  WholeRing ring = ring_of(polygon);
  if (ring.size() < 3) return {};
  const bool convex = ring.is_convex() && ring.orientation() != CGAL::COLLINEAR;
  const bool simple = convex || ring.is_simple();
  if (simple && ring.is_clockwise_oriented()) ring.reverse_orientation();
  const Part part = directed(ring);
  if (simple) return part;
  std::vector<Edge> edges;
  add_part(part, outline_a, edges);
  for (Edge& edge : edges) edge.data().part = kMayCross;
  return united(edges);
}

// Whether the boxes of the parts meet so often that crossings would cost more than uniting a few
// parts at a time, which takes away what lies inside before it meets the rest.
bool meet_often(const std::vector<Part>& parts) {
  constexpr std::size_t kOften = 4;  // a part; chosen by timing
  std::vector<CGAL::Bbox_2> boxes;
  for (const Part& part : parts) {
    CGAL::Bbox_2 box;
    for (const Directed& edge : part) box += edge.segment.bbox();
    boxes.push_back(box);
  }
  std::sort(boxes.begin(), boxes.end(),
            [](const CGAL::Bbox_2& a, const CGAL::Bbox_2& b) { return a.xmin() < b.xmin(); });
  std::size_t meetings = 0;
  for (auto box = boxes.begin(); box != boxes.end(); ++box)
    for (auto next = box + 1; next != boxes.end() && next->xmin() <= box->xmax(); ++next)
      meetings += CGAL::do_overlap(*box, *next);
  return meetings > kOften * parts.size();
}

// The same, a few united at a time.
std::vector<Part> fewer(const std::vector<Part>& parts) {
  constexpr std::size_t kAtOnce = 5;  // chosen by timing
  std::vector<Part> out;
  for (std::size_t i = 0; i < parts.size(); i += kAtOnce) {
    std::vector<Edge> edges;
    for (std::size_t k = i; k < std::min(i + kAtOnce, parts.size()); ++k)
      add_part(parts[k], outline_a, edges);
    out.push_back(united(edges));
  }
  return out;
}

double in_mm(const Number& steps) {
  return CGAL::to_double(steps) * kOutlineGrid + 0.0;  // never -0
}

Polygon polygon_of(const Ring& ring) {
  Polygon polygon;
  for (const Point& p : ring) polygon.push_back({in_mm(-p.y()), in_mm(p.x())});
  return polygon;
}

Regions regions_of(const std::vector<Shape>& shapes) {
  // The default, 1e-5, would lose a hundredth of a millimeter on a wall. The setting is per thread.
  Number::set_relative_precision_of_to_double(1e-15);
  Regions regions;
  for (const Shape& shape : shapes) {
    Region region{polygon_of(shape.front()), {}};
    for (std::size_t h = 1; h < shape.size(); ++h) region.holes.push_back(polygon_of(shape[h]));
    regions.push_back(std::move(region));
  }
  return in_order(std::move(regions));
}

void add_rings(const std::vector<Polygon>& polygons, Role role, std::vector<Edge>& edges) {
  std::vector<Part> parts;
  for (const Polygon& polygon : polygons) parts.push_back(part_of(polygon));
  while (parts.size() > 1 && meet_often(parts)) parts = fewer(parts);
  for (const Part& part : parts) add_part(part, role, edges);
}

void add_regions(const Regions& regions, Role outline, Role hole, std::vector<Edge>& edges) {
  for (const Region& region : regions) {
    add_rings({region.outline}, outline, edges);
    add_rings(region.holes, hole, edges);
  }
}

std::vector<Edge> edges_of(const Regions& a, const Regions& b) {
  std::vector<Edge> edges;
  add_regions(a, outline_a, hole_a, edges);
  add_regions(b, outline_b, hole_b, edges);
  return edges;
}

}  // namespace

Regions unite(const std::vector<Polygon>& rings) {
  std::vector<Edge> edges;
  add_rings(rings, outline_a, edges);
  return regions_of(shapes_of(edges, in_a));
}

Regions unite(const Regions& a, const Regions& b) {
  return regions_of(shapes_of(edges_of(a, b), [](const Winding& w) { return in_a(w) || in_b(w); }));
}

Regions intersect(const Regions& a, const Regions& b) {
  if (far_apart(a, b)) return {};
  return regions_of(shapes_of(edges_of(a, b), [](const Winding& w) { return in_a(w) && in_b(w); }));
}

Regions intersect(const std::vector<Polygon>& rings, const Regions& b) {
  const std::vector<Polygon> here = near(rings, b);
  if (here.empty()) return {};
  std::vector<Edge> edges;
  add_rings(here, outline_a, edges);
  add_regions(b, outline_b, hole_b, edges);
  return regions_of(shapes_of(edges, [](const Winding& w) { return in_a(w) && in_b(w); }));
}

Regions subtract(const Regions& a, const Regions& b) {
  return regions_of(
      shapes_of(edges_of(a, b), [](const Winding& w) { return in_a(w) && !in_b(w); }));
}

}  // namespace nook
