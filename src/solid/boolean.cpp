// CGAL's regularized Boolean sets (Fogel, Setter, Wein et al.) with an exact-constructions kernel.
#include "solid/boolean.h"

#include <CGAL/Boolean_set_operations_2.h>
#include <CGAL/Exact_predicates_exact_constructions_kernel.h>
#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>

#include <algorithm>
#include <cmath>
#include <list>

namespace nook {
namespace {

using Kernel = CGAL::Exact_predicates_exact_constructions_kernel;
using Number = Kernel::FT;
using Point = Kernel::Point_2;
using Ring = CGAL::Polygon_2<Kernel>;
using Shape = CGAL::Polygon_with_holes_2<Kernel>;
using Set = CGAL::General_polygon_set_2<CGAL::Gps_segment_traits_2<Kernel>>::Base;
// Whole numbers in double: exact questions are cheap while nothing new is made of them.
using WholeKernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using WholeRing = CGAL::Polygon_2<WholeKernel>;

double on_grid(double x) {
  return std::round(x / kOutlineGrid);
}

// In grid steps, so that every coordinate going in is a whole number. Doubled points and spikes of
// no width are left out.
WholeRing ring_of(const Polygon& polygon) {
  std::vector<WholeKernel::Point_2> points;
  for (Vec2 p : polygon) {
    const WholeKernel::Point_2 next(on_grid(p.x), on_grid(p.y));
    if (points.empty() || points.back() != next) points.push_back(next);
  }
  while (points.size() > 1 && points.back() == points.front()) points.pop_back();
  return WholeRing(points.begin(), points.end());
}

Ring exact(const WholeRing& ring) {
  Ring out;
  for (const auto& p : ring) out.push_back(Point(p.x(), p.y()));
  return out;
}

struct Side {
  Point low, high;  // by x
  int way;          // +1 where the ring runs towards greater x
  Number y(const Number& x) const {
    return low.y() + (high.y() - low.y()) * (x - low.x()) / (high.x() - low.x());
  }
};

std::vector<Side> sides_of(const Ring& ring) {
  std::vector<Side> sides;
  for (auto e = ring.edges_begin(); e != ring.edges_end(); ++e) {
    if (e->source().x() < e->target().x()) sides.push_back({e->source(), e->target(), 1});
    if (e->source().x() > e->target().x()) sides.push_back({e->target(), e->source(), -1});
  }
  return sides;
}

// Every x where an edge ends or two cross.
std::vector<Number> slabs_of(const std::vector<Side>& sides) {
  std::vector<Number> xs;
  for (std::size_t i = 0; i < sides.size(); ++i) {
    xs.push_back(sides[i].low.x());
    xs.push_back(sides[i].high.x());
    for (std::size_t k = 0; k < i; ++k) {
      const auto met = CGAL::intersection(Kernel::Segment_2(sides[i].low, sides[i].high),
                                          Kernel::Segment_2(sides[k].low, sides[k].high));
      if (!met) continue;
      if (const Point* p = boost::get<Point>(&*met)) xs.push_back(p->x());
    }
  }
  std::sort(xs.begin(), xs.end());
  xs.erase(std::unique(xs.begin(), xs.end()), xs.end());
  return xs;
}

void add_cell(std::list<Ring>& cells, const Point (&corner)[4]) {
  Ring cell;
  for (const Point& p : corner)
    if (cell.is_empty() || *(cell.vertices_end() - 1) != p) cell.push_back(p);
  if (cell.size() > 1 && *cell.vertices_begin() == *(cell.vertices_end() - 1))
    cell.erase(cell.vertices_end() - 1);
  if (cell.size() >= 3 && cell.area() > 0) cells.push_back(cell);
}

// The parts of one upright slab that the ring winds round.
void add_wound(const std::vector<Side>& sides, const Number& from, const Number& to,
               std::list<Ring>& cells) {
  const Number middle = (from + to) / 2;
  std::vector<std::pair<Number, const Side*>> across;
  for (const Side& s : sides)
    if (s.low.x() <= from && s.high.x() >= to) across.emplace_back(s.y(middle), &s);
  std::stable_sort(across.begin(), across.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  int winding = 0;
  for (std::size_t i = 0; i + 1 < across.size(); ++i) {
    winding += across[i].second->way;
    if (winding == 0) continue;
    const Side &low = *across[i].second, &high = *across[i + 1].second;
    add_cell(cells, {Point(from, low.y(from)), Point(to, low.y(to)), Point(to, high.y(to)),
                     Point(from, high.y(from))});
  }
}

// A ring that crosses itself as cells that do not.
std::list<Ring> mended(const Ring& ring) {
  const std::vector<Side> sides = sides_of(ring);
  const std::vector<Number> xs = slabs_of(sides);
  std::list<Ring> cells;
  for (std::size_t i = 0; i + 1 < xs.size(); ++i) add_wound(sides, xs[i], xs[i + 1], cells);
  return cells;
}

// Anticlockwise, without crossing itself: CGAL's sets need that and do not look.
void add_clean(const Polygon& polygon, std::list<Ring>& rings) {
  WholeRing ring = ring_of(polygon);
  if (ring.size() < 3) return;
  if (!ring.is_simple()) {
    rings.splice(rings.end(), mended(exact(ring)));
    return;
  }
  if (ring.is_clockwise_oriented()) ring.reverse_orientation();
  rings.push_back(exact(ring));
}

// How many sets are united in one sweep. All of them where few meet: an edge is then looked at
// once. Else CGAL's own 5, which takes away what lies inside before it meets the rest.
unsigned united_at_once(const std::list<Ring>& rings) {
  constexpr std::size_t kMostRings = 64, kMostMeetings = 4;  // in all, of one. Chosen by timing
  if (rings.size() > kMostRings) return 5;
  std::vector<CGAL::Bbox_2> boxes;
  std::size_t meetings = 0;
  for (const Ring& ring : rings) {
    const CGAL::Bbox_2 box = ring.bbox();
    for (const CGAL::Bbox_2& other : boxes) meetings += CGAL::do_overlap(box, other);
    boxes.push_back(box);
  }
  return meetings <= kMostMeetings * rings.size() ? kMostRings + 1 : 5;
}

Set set_of(const std::vector<Polygon>& rings) {
  std::list<Ring> clean;
  for (const Polygon& ring : rings) add_clean(ring, clean);
  Set set;
  if (clean.size() == 1)
    set.join(clean.front());
  else
    set.join(clean.begin(), clean.end(), united_at_once(clean));
  return set;
}

Set set_of(const Regions& regions) {
  std::vector<Polygon> outlines, holes;
  for (const Region& r : regions) {
    outlines.push_back(r.outline);
    holes.insert(holes.end(), r.holes.begin(), r.holes.end());
  }
  Set set = set_of(outlines);
  if (!holes.empty()) set.difference(set_of(holes));
  return set;
}

// More than a grid step apart.
bool apart(const Box2& a, const Box2& b) {
  return a.low.x > b.high.x + kOutlineGrid || b.low.x > a.high.x + kOutlineGrid ||
         a.low.y > b.high.y + kOutlineGrid || b.low.y > a.high.y + kOutlineGrid;
}

std::vector<Box2> boxes_of(const Regions& regions) {
  std::vector<Box2> boxes;
  for (const Region& r : regions)
    if (!r.outline.empty()) boxes.push_back(box_of(r.outline));
  return boxes;
}

bool near(const Polygon& ring, const std::vector<Box2>& boxes) {
  return !ring.empty() &&
         std::any_of(boxes.begin(), boxes.end(),
                     [box = box_of(ring)](const Box2& other) { return !apart(box, other); });
}

std::vector<Polygon> near(const std::vector<Polygon>& rings, const Regions& regions) {
  const std::vector<Box2> boxes = boxes_of(regions);
  std::vector<Polygon> found;
  std::copy_if(rings.begin(), rings.end(), std::back_inserter(found),
               [&](const Polygon& ring) { return near(ring, boxes); });
  return found;
}

bool far_apart(const Regions& a, const Regions& b) {
  const std::vector<Box2> boxes = boxes_of(b);
  return std::none_of(a.begin(), a.end(),
                      [&](const Region& region) { return near(region.outline, boxes); });
}

double in_mm(const Number& steps) {
  return CGAL::to_double(steps) * kOutlineGrid + 0.0;  // never -0
}

Polygon polygon_of(const Ring& ring) {
  Polygon polygon;
  for (const Point& p : ring) polygon.push_back({in_mm(p.x()), in_mm(p.y())});
  const auto lower = [](Vec2 a, Vec2 b) { return a.y < b.y || (a.y == b.y && a.x < b.x); };
  std::rotate(polygon.begin(), std::min_element(polygon.begin(), polygon.end(), lower),
              polygon.end());
  return polygon;
}

bool before(const Polygon& a, const Polygon& b) {
  return a.front().x < b.front().x || (a.front().x == b.front().x && a.front().y < b.front().y);
}

Regions regions_of(const Set& set) {
  // The default, 1e-5, would lose a hundredth of a millimetre on a wall. The setting is per thread.
  Number::set_relative_precision_of_to_double(1e-15);
  std::list<Shape> shapes;
  set.polygons_with_holes(std::back_inserter(shapes));
  Regions regions;
  for (const Shape& shape : shapes) {
    Region region{polygon_of(shape.outer_boundary()), {}};
    for (auto h = shape.holes_begin(); h != shape.holes_end(); ++h)
      region.holes.push_back(polygon_of(*h));
    std::sort(region.holes.begin(), region.holes.end(), before);
    regions.push_back(std::move(region));
  }
  std::sort(regions.begin(), regions.end(),
            [](const Region& a, const Region& b) { return before(a.outline, b.outline); });
  return regions;
}

}  // namespace

bool far_apart(const Polygon& a, const Polygon& b) {
  return a.empty() || b.empty() || apart(box_of(a), box_of(b));
}

Regions unite(const std::vector<Polygon>& rings) {
  if (rings.empty()) return {};
  return regions_of(set_of(rings));
}

Regions unite(const Regions& a, const Regions& b) {
  Set set = set_of(a);
  set.join(set_of(b));
  return regions_of(set);
}

Regions intersect(const Regions& a, const Regions& b) {
  if (far_apart(a, b)) return {};
  Set set = set_of(a);
  set.intersection(set_of(b));
  return regions_of(set);
}

Regions intersect(const std::vector<Polygon>& rings, const Regions& b) {
  const std::vector<Polygon> here = near(rings, b);
  if (here.empty()) return {};
  Set set = set_of(here);
  set.intersection(set_of(b));
  return regions_of(set);
}

Regions subtract(const Regions& a, const Regions& b) {
  Set set = set_of(a);
  set.difference(set_of(b));
  return regions_of(set);
}

}  // namespace nook
