// CGAL's squared distance of triangles, pairs pruned by their boxes.
#include "solid/distance.h"

#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/squared_distance_3.h>

#include <algorithm>
#include <limits>

namespace nook {
namespace {

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;

struct Boxed {
  Vec3 low, high;
  Kernel::Triangle_3 triangle;
};

Kernel::Point_3 point(Vec3 p) {
  return {p.x, p.y, p.z};
}

std::vector<Boxed> boxed(const Mesh& mesh) {
  std::vector<Boxed> all;
  for (const Triangle& t : mesh) {
    Boxed b{t[0], t[0], {point(t[0]), point(t[1]), point(t[2])}};
    if (b.triangle.is_degenerate()) continue;
    for (Vec3 p : t) {
      b.low = {std::min(b.low.x, p.x), std::min(b.low.y, p.y), std::min(b.low.z, p.z)};
      b.high = {std::max(b.high.x, p.x), std::max(b.high.y, p.y), std::max(b.high.z, p.z)};
    }
    all.push_back(b);
  }
  return all;
}

double apart(double low_a, double high_a, double low_b, double high_b) {
  return std::max({0.0, low_b - high_a, low_a - high_b});
}

double box_distance2(const Boxed& a, const Boxed& b) {
  const Vec3 d{apart(a.low.x, a.high.x, b.low.x, b.high.x),
               apart(a.low.y, a.high.y, b.low.y, b.high.y),
               apart(a.low.z, a.high.z, b.low.z, b.high.z)};
  return dot(d, d);
}

// Two triangles, and what their squared distance is at least.
struct Nearness {
  double bound;
  int a, b;
};

Nearness nearest_boxes(const std::vector<Boxed>& a, const std::vector<Boxed>& b) {
  Nearness best{std::numeric_limits<double>::infinity(), 0, 0};
  for (int i = 0; i < static_cast<int>(a.size()); ++i)
    for (int k = 0; k < static_cast<int>(b.size()); ++k)
      if (const double bound = box_distance2(a[i], b[k]); bound < best.bound) best = {bound, i, k};
  return best;
}

}  // namespace

Mesh prism(const std::vector<Polygon>& cells, double thickness) {
  Mesh mesh;
  const auto at = [](Vec2 p, double w) { return Vec3{p.x, p.y, w}; };
  for (const Polygon& cell : cells) {
    for (std::size_t i = 0; i < cell.size(); ++i) {
      const Vec2 a = cell[i], b = cell[(i + 1) % cell.size()];
      mesh.push_back({at(a, 0), at(b, 0), at(b, thickness)});
      mesh.push_back({at(a, 0), at(b, thickness), at(a, thickness)});
    }
    for (std::size_t i = 1; i + 1 < cell.size(); ++i)
      for (double w : {0.0, thickness})
        mesh.push_back({at(cell[0], w), at(cell[i], w), at(cell[i + 1], w)});
  }
  return mesh;
}

double distance(const Mesh& a, const Mesh& b) {
  const std::vector<Boxed> boxes_a = boxed(a), boxes_b = boxed(b);
  double least = std::numeric_limits<double>::infinity();
  if (boxes_a.empty() || boxes_b.empty()) return least;
  const Nearness first = nearest_boxes(boxes_a, boxes_b);
  least = CGAL::squared_distance(boxes_a[first.a].triangle, boxes_b[first.b].triangle);
  std::vector<Nearness> pairs;  // those that may be nearer
  for (int i = 0; i < static_cast<int>(boxes_a.size()); ++i)
    for (int k = 0; k < static_cast<int>(boxes_b.size()); ++k)
      if (const double bound = box_distance2(boxes_a[i], boxes_b[k]); bound < least)
        pairs.push_back({bound, i, k});
  std::sort(pairs.begin(), pairs.end(),
            [](const Nearness& x, const Nearness& y) { return x.bound < y.bound; });
  for (const Nearness& pair : pairs) {
    if (pair.bound >= least) break;
    least =
        std::min(least, CGAL::squared_distance(boxes_a[pair.a].triangle, boxes_b[pair.b].triangle));
  }
  return std::sqrt(least);
}

}  // namespace nook
