// The line runs through two neighbors on the lower hull, or is level through the lowest point.
#include "fit/straight_cut.h"

#include <algorithm>
#include <cmath>

#include "base/invariant.h"

namespace nook {
namespace {

std::vector<Vec2> lower_hull(const std::vector<Vec2>& points) {
  std::vector<Vec2> hull;
  for (Vec2 p : points) {
    while (hull.size() >= 2 && cross(hull.back() - hull[hull.size() - 2], p - hull.back()) <= 0)
      hull.pop_back();
    hull.push_back(p);
  }
  return hull;
}

StraightCut line_with(const std::vector<Vec2>& gaps, double slope) {
  double low = 1e300, high = -1e300;
  for (Vec2 p : gaps) {
    low = std::min(low, p.y - slope * p.x);
    high = std::max(high, p.y - slope * p.x);
  }
  return {low, slope, high - low};
}

}  // namespace

StraightCut straight_cut(std::vector<Vec2> gaps) {
  require(!gaps.empty(), "a straight cut has gaps to follow");
  std::sort(gaps.begin(), gaps.end(),
            [](Vec2 a, Vec2 b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
  std::vector<Vec2> above = gaps;
  for (Vec2& p : above) p.y = -p.y;
  StraightCut best = line_with(gaps, 0);
  const auto look = [&](const std::vector<Vec2>& hull, double sign) {
    for (std::size_t i = 0; i + 1 < hull.size(); ++i) {
      const Vec2 d = hull[i + 1] - hull[i];
      if (d.x < 1e-6) continue;
      const StraightCut next = line_with(gaps, sign * d.y / d.x);
      if (next.left < best.left - 1e-9) best = next;
    }
  };
  look(lower_hull(gaps), 1);
  look(lower_hull(above), -1);
  return best;
}

}  // namespace nook
