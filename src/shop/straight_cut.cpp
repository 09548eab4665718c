// The optimum lies along an edge of the lower hull of the points.
#include "shop/straight_cut.h"

#include <algorithm>

#include "base/vector.h"

namespace nook {
namespace {

std::vector<Vec2> lower_hull(const std::vector<GapPoint>& line) {
  std::vector<Vec2> hull;
  for (const GapPoint& point : line) {
    const Vec2 p{point.at, point.gap};
    while (hull.size() >= 2 && cross(hull.back() - hull[hull.size() - 2], p - hull.back()) <= 0)
      hull.pop_back();
    hull.push_back(p);
  }
  return hull;
}

double widest_left(const StraightCut& cut, const std::vector<GapPoint>& line) {
  double widest = 0;
  for (const GapPoint& point : line) widest = std::max(widest, point.gap - cut.out(point.at));
  return widest;
}

}  // namespace

StraightCut straight_cut(std::vector<GapPoint> line) {
  if (line.empty()) return {};
  std::sort(line.begin(), line.end(), [](const GapPoint& a, const GapPoint& b) {
    return a.at < b.at || (a.at == b.at && a.gap < b.gap);
  });
  const std::vector<Vec2> hull = lower_hull(line);
  StraightCut best{hull[0].y, 0};
  double least = -1;
  for (size_t i = 0; i + 1 < hull.size(); ++i) {
    if (hull[i + 1].x - hull[i].x < 1e-9) continue;
    const double slope = (hull[i + 1].y - hull[i].y) / (hull[i + 1].x - hull[i].x);
    const StraightCut cut{hull[i].y - slope * hull[i].x, slope};
    const double left = widest_left(cut, line);
    if (least < 0 || left < least) least = left, best = cut;
  }
  return best;
}

}  // namespace nook
