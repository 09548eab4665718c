// Mirrored rings run the other way round: points are compared one by one from each possible start.
#include "design/symmetry.h"

#include <algorithm>

#include "base/invariant.h"

namespace nook {
namespace {

constexpr double kAlike = 0.01;  // mm; chosen: no saw does better

double twice_centre_of(const Polygon& outline) {
  double low = 1e300, high = -1e300;
  for (const Vec2 p : outline) low = std::min(low, p.x), high = std::max(high, p.x);
  return low + high;
}

}  // namespace

std::optional<int> across(const Polygon& a, const Polygon& b, double twice_centre) {
  const int n = static_cast<int>(a.size());
  if (b.size() != a.size()) return std::nullopt;
  const auto mirrors = [&](int k, int start) {
    return norm(Vec2{twice_centre - a[k].x, a[k].y} - b[(start - k + n) % n]) < kAlike;
  };
  for (int start = 0; start < n; ++start) {
    int k = 0;
    while (k < n && mirrors(k, start)) ++k;
    if (k == n) return start;
  }
  return std::nullopt;
}

bool alike_on_both_sides(const Part& part) {
  const double twice = twice_centre_of(part.outline);
  return across(part.outline, part.outline, twice) &&
         std::all_of(part.cutouts.begin(), part.cutouts.end(), [&](const Cutout& a) {
           return std::any_of(part.cutouts.begin(), part.cutouts.end(), [&](const Cutout& b) {
             return across(a.outline, b.outline, twice).has_value();
           });
         });
}

EdgeRun run_across(const Polygon& outline, const EdgeRun& run) {
  const auto start = across(outline, outline, twice_centre_of(outline));
  require(start.has_value(), "a part with a run across is alike on both sides");
  const int n = static_cast<int>(outline.size());
  return {(*start - run.last - 1 + 2 * n) % n, (*start - run.first - 1 + 2 * n) % n};
}

}  // namespace nook
