// Elastic sharing among equal springs.
#include "fasten/load_share.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

constexpr double kOneStud = 100;  // mm; screws nearer than this stand in one stud. Chosen
constexpr double kPlumb = 1;      // mm; a load this near to its one screw does not turn. Chosen

}  // namespace

std::vector<ScrewLoad> shares(const std::vector<Vec2>& at, double load, double x) {
  const double n = static_cast<double>(at.size());
  Vec2 middle;
  for (Vec2 p : at) middle = middle + (1 / n) * p;
  double low = at.front().x, high = low, level = 0, upright = 0;
  for (Vec2 p : at) {
    low = std::min(low, p.x);
    high = std::max(high, p.x);
    level += (p.x - middle.x) * (p.x - middle.x);
    upright += (p.y - middle.y) * (p.y - middle.y);
  }
  const double moment = load * (x - middle.x);
  const bool beam = high - low > kOneStud;
  const double stiffness = beam ? level : level + upright;
  if (stiffness <= 0) {
    if (std::abs(x - middle.x) > kPlumb) return {};
    return std::vector<ScrewLoad>(at.size(), {load / n, 0});
  }
  std::vector<ScrewLoad> result;
  for (Vec2 p : at)
    result.push_back({load / n + moment * (p.x - middle.x) / stiffness,
                      beam ? 0 : moment * (p.y - middle.y) / stiffness});
  return result;
}

}  // namespace nook
