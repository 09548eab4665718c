// Strips between neighboring corners, each crossed by the same edges all along.
#include "safety/trapezoid.h"

#include <algorithm>

namespace nook::safe {
namespace {

struct Edge {
  Vec2 low, high;  // low.x < high.x
  double y(double x) const {
    if (x == low.x) return low.y;
    if (x == high.x) return high.y;
    return low.y + (high.y - low.y) * (x - low.x) / (high.x - low.x);
  }
};

void add(const Polygon& ring, std::vector<Edge>& edges, std::vector<double>& uprights) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2 a = ring[i], b = ring[(i + 1) % ring.size()];
    uprights.push_back(a.x);
    if (a.x < b.x) edges.push_back({a, b});
    if (b.x < a.x) edges.push_back({b, a});
  }
}

}  // namespace

std::vector<Polygon> trapezoids_of(const Region& region) {
  std::vector<Edge> edges;
  std::vector<double> uprights;
  add(region.outline, edges, uprights);
  for (const Polygon& hole : region.holes) add(hole, edges, uprights);
  std::sort(uprights.begin(), uprights.end());
  uprights.erase(std::unique(uprights.begin(), uprights.end()), uprights.end());
  std::vector<Polygon> cells;
  for (std::size_t i = 0; i + 1 < uprights.size(); ++i) {
    const double a = uprights[i], b = uprights[i + 1], middle = (a + b) / 2;
    std::vector<const Edge*> across;
    for (const Edge& edge : edges)
      if (edge.low.x <= a && edge.high.x >= b) across.push_back(&edge);
    std::sort(across.begin(), across.end(),
              [&](const Edge* p, const Edge* q) { return p->y(middle) < q->y(middle); });
    for (std::size_t k = 0; k + 1 < across.size(); k += 2)
      cells.push_back({{a, across[k]->y(a)},
                       {b, across[k]->y(b)},
                       {b, across[k + 1]->y(b)},
                       {a, across[k + 1]->y(a)}});
  }
  return cells;
}

}  // namespace nook::safe
