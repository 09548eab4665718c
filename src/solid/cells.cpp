// CGAL's constrained Delaunay triangulation, its triangles merged while they stay convex (Hertel
// and Mehlhorn 1983), and sums of convex outlines.
#include "solid/cells.h"

#include <CGAL/Constrained_Delaunay_triangulation_2.h>
#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Spatial_sort_traits_adapter_2.h>
#include <CGAL/Triangulation_vertex_base_with_info_2.h>
#include <CGAL/property_map.h>
#include <CGAL/spatial_sort.h>

#include <algorithm>
#include <map>
#include <numbers>
#include <set>

#include "base/invariant.h"

namespace nook {
namespace {

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
// Of a vertex: its index among the points, none before it has one.
struct Number {
  int at = -1;
};
using VertexBase = CGAL::Triangulation_vertex_base_with_info_2<Number, Kernel>;
using FaceBase = CGAL::Constrained_triangulation_face_base_2<Kernel>;
using Data = CGAL::Triangulation_data_structure_2<VertexBase, FaceBase>;
using Triangulation =
    CGAL::Constrained_Delaunay_triangulation_2<Kernel, Data, CGAL::Exact_predicates_tag>;

using Cell = std::vector<int>;  // anticlockwise indices of points

using Vertex = Triangulation::Vertex_handle;

void number(Vertex vertex, Polygon& points) {
  if (vertex->info().at >= 0) return;
  vertex->info().at = static_cast<int>(points.size());
  points.push_back({vertex->point().x(), vertex->point().y()});
}

// The corners of a ring, near ones put in one after the other: in the ring's own order each one
// would be searched for, and turn long triangles over, from the last one on.
std::vector<Vertex> corners_of(Triangulation& cdt, const Polygon& ring) {
  std::vector<Kernel::Point_2> points;
  for (Vec2 p : ring) points.emplace_back(p.x, p.y);
  std::vector<std::size_t> order(points.size());
  std::iota(order.begin(), order.end(), 0);
  using Places = CGAL::Pointer_property_map<Kernel::Point_2>::type;
  CGAL::spatial_sort(
      order.begin(), order.end(),
      CGAL::Spatial_sort_traits_adapter_2<Kernel, Places>(CGAL::make_property_map(points)));
  std::vector<Vertex> at(points.size());
  Triangulation::Face_handle near;
  for (const std::size_t i : order) {
    at[i] = cdt.insert(points[i], near);
    near = at[i]->face();
  }
  return at;
}

void add_ring(Triangulation& cdt, const Polygon& ring, Polygon& points) {
  const std::vector<Vertex> at = corners_of(cdt, ring);
  for (std::size_t i = 0; i < at.size(); ++i) {
    number(at[i], points);
    if (at[i] != at[(i + 1) % at.size()]) cdt.insert_constraint(at[i], at[(i + 1) % at.size()]);
  }
}

Vec2 middle_of(Triangulation::Face_handle f) {
  Vec2 middle;
  for (int k = 0; k < 3; ++k)
    middle = middle + (1.0 / 3) * Vec2{f->vertex(k)->point().x(), f->vertex(k)->point().y()};
  return middle;
}

double area_of(Triangulation::Face_handle f) {
  const auto at = [&](int k) { return Vec2{f->vertex(k)->point().x(), f->vertex(k)->point().y()}; };
  return cross(at(1) - at(0), at(2) - at(0)) / 2;
}

// Triangles that no ring parts: all inside or all outside.
std::vector<Triangulation::Face_handle> patch_from(Triangulation& cdt,
                                                   Triangulation::Face_handle first,
                                                   std::set<Triangulation::Face_handle>& seen) {
  std::vector<Triangulation::Face_handle> patch{first};
  seen.insert(first);
  for (std::size_t i = 0; i < patch.size(); ++i)
    for (int k = 0; k < 3; ++k) {
      const auto next = patch[i]->neighbor(k);
      if (cdt.is_infinite(next) || cdt.is_constrained({patch[i], k}) || !seen.insert(next).second)
        continue;
      patch.push_back(next);
    }
  return patch;
}

// Even-odd, asked once a patch, in its largest triangle: outline and holes need no orientation.
std::vector<Cell> triangles_of(Triangulation& cdt, const Region& region) {
  std::vector<Cell> cells;
  std::set<Triangulation::Face_handle> seen;
  for (auto f = cdt.finite_faces_begin(); f != cdt.finite_faces_end(); ++f) {
    if (seen.count(f) > 0) continue;
    const auto patch = patch_from(cdt, f, seen);
    const auto largest =
        *std::max_element(patch.begin(), patch.end(),
                          [](const auto& a, const auto& b) { return area_of(a) < area_of(b); });
    const auto odd = inside(region, middle_of(largest), {1, 0});
    const auto holds = [](Stretch s) { return s.from < 0 && s.to > 0; };
    if (std::none_of(odd.begin(), odd.end(), holds)) continue;
    for (const auto& face : patch)
      cells.push_back(
          {face->vertex(0)->info().at, face->vertex(1)->info().at, face->vertex(2)->info().at});
  }
  return cells;
}

// A straight joint stays convex; one that runs back along itself does not.
bool turns_left(Vec2 a, Vec2 b, Vec2 c) {
  constexpr double kStraight = 1e-9;  // mm^2
  const double turn = cross(b - a, c - b);
  return turn > kStraight || (turn >= -kStraight && dot(b - a, c - b) > 0);
}

bool convex(const Cell& cell, const Polygon& points) {
  const std::size_t n = cell.size();
  for (std::size_t i = 0; i < n; ++i)
    if (!turns_left(points[cell[i]], points[cell[(i + 1) % n]], points[cell[(i + 2) % n]]))
      return false;
  return true;
}

// Both cells as one, where they share the edge from point `from` to point `to` of `a`.
Cell joined(Cell a, Cell b, int from, int to) {
  std::rotate(a.begin(), std::find(a.begin(), a.end(), to), a.end());
  std::rotate(b.begin(), std::find(b.begin(), b.end(), from), b.end());
  a.insert(a.end(), b.begin() + 1, b.end() - 1);  // a: to .. from; b: from .. to
  return a;
}

// Drops every inner edge whose cells together are convex, each looked at once.
void merge_cells(std::vector<Cell>& cells, const Polygon& points) {
  std::map<std::pair<int, int>, int> cell_at;  // of a directed edge
  const auto enter = [&](int c) {
    for (std::size_t i = 0; i < cells[c].size(); ++i)
      cell_at[{cells[c][i], cells[c][(i + 1) % cells[c].size()]}] = c;
  };
  for (int c = 0; c < static_cast<int>(cells.size()); ++c) enter(c);
  const auto edges = cell_at;
  for (const auto& [edge, first] : edges) {
    const auto here = cell_at.find(edge), there = cell_at.find({edge.second, edge.first});
    if (here == cell_at.end() || there == cell_at.end() || edge.first > edge.second) continue;
    const int a = here->second, b = there->second;
    if (a == b) continue;
    const Cell all = joined(cells[a], cells[b], edge.first, edge.second);
    if (!convex(all, points)) continue;
    cell_at.erase(here);
    cell_at.erase({edge.second, edge.first});
    cells[a] = all;
    cells[b].clear();
    enter(a);
  }
  std::erase_if(cells, [](const Cell& cell) { return cell.empty(); });
}

}  // namespace

std::vector<Polygon> convex_cells(const Region& region) {
  Triangulation cdt;
  Polygon points;
  add_ring(cdt, region.outline, points);
  for (const Polygon& hole : region.holes) add_ring(cdt, hole, points);
  for (auto v = cdt.finite_vertices_begin(); v != cdt.finite_vertices_end(); ++v)
    number(v, points);  // where rings cross
  std::vector<Cell> cells = triangles_of(cdt, region);
  merge_cells(cells, points);
  std::vector<Polygon> outlines;
  for (const Cell& cell : cells) {
    Polygon outline;
    for (int k : cell) outline.push_back(points[k]);
    outlines.push_back(std::move(outline));
  }
  return outlines;
}

Polygon hull_of(Polygon points) {
  std::sort(points.begin(), points.end(),
            [](Vec2 a, Vec2 b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
  points.erase(std::unique(points.begin(), points.end()), points.end());
  Polygon hull;
  for (int side = 0; side < 2; ++side) {  // lower side, then upper (Andrew 1979)
    const std::size_t base = hull.size();
    for (Vec2 p : points) {
      while (hull.size() >= base + 2 &&
             cross(hull.back() - hull[hull.size() - 2], p - hull.back()) <= 0)
        hull.pop_back();
      hull.push_back(p);
    }
    if (!hull.empty()) hull.pop_back();
    std::reverse(points.begin(), points.end());
  }
  return hull;
}

Polygon grown(const Polygon& convex, double clearance) {
  require(clearance >= 0, "a clearance is not negative");
  constexpr int kSides = 16;
  const double reach = clearance / std::cos(std::numbers::pi / kSides);
  Polygon points;
  for (Vec2 p : convex)
    for (int k = 0; k < kSides; ++k) {
      const double turn = (2 * k + 1) * std::numbers::pi / kSides;  // flat sides to left, right, up
      points.push_back(p + reach * Vec2{std::cos(turn), std::sin(turn)});
    }
  return hull_of(std::move(points));
}

}  // namespace nook
