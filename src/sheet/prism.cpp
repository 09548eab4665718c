// Depth told by the slots between boxes.
#include "sheet/prism.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

constexpr double kTouch = 8;  // mm by which neighbors may overlap and still be told apart. Chosen

// How clearly a lies behind b: the widest of the three slots between them, mm.
double behind_by(const Prism& a, const Prism& b) {
  return std::max({b.low.x - a.high.x, b.low.y - a.high.y, b.low.z - a.high.z});
}

bool is_behind(const Prism& a, const Prism& b) {
  if (!overlap(a.page, b.page)) return false;
  const double ab = behind_by(a, b), ba = behind_by(b, a);
  return ab > -kTouch && ab > ba;
}

double depth(const Prism& p) {
  return dot(p.low, kTowardsEye) + dot(p.high, kTowardsEye);
}

}  // namespace

Vec2 isometric(Vec3 p) {
  static const double kCos30 = std::sqrt(3.0) / 2;
  return {kCos30 * (p.y - p.x), p.z - 0.5 * (p.x + p.y)};
}

Prism prism_of(const JobScene& scene, int piece, int step) {
  Prism it{piece, step, false, {1e300, 1e300, 1e300}, {-1e300, -1e300, -1e300}, {}};
  for (Vec3 p : solid_of(scene.pieces[piece], scene.frames[piece])) {
    it.low = {std::min(it.low.x, p.x), std::min(it.low.y, p.y), std::min(it.low.z, p.z)};
    it.high = {std::max(it.high.x, p.x), std::max(it.high.y, p.y), std::max(it.high.z, p.z)};
    it.page.take_in(isometric(p));
  }
  return it;
}

std::vector<Prism> far_to_near(std::vector<Prism> prisms) {
  std::stable_sort(prisms.begin(), prisms.end(),
                   [](const Prism& a, const Prism& b) { return depth(a) < depth(b); });
  std::vector<Prism> painted;
  while (!prisms.empty()) {
    const auto free = std::find_if(prisms.begin(), prisms.end(), [&](const Prism& a) {
      return std::none_of(prisms.begin(), prisms.end(),
                          [&](const Prism& b) { return &a != &b && is_behind(b, a); });
    });
    const auto next = free == prisms.end() ? prisms.begin() : free;
    painted.push_back(*next);
    prisms.erase(next);
  }
  return painted;
}

}  // namespace nook
