// Fastenings as links between pieces.
#include "safety/holding.h"

#include <algorithm>

namespace nook::safe {
namespace {

void join(std::vector<int>& thing, int a, int b) {
  const int from = std::max(thing[a], thing[b]), to = std::min(thing[a], thing[b]);
  std::replace(thing.begin(), thing.end(), from, to);
}

}  // namespace

std::vector<int> pieces_of(const Scene& scene, const Fastening& fastening) {
  return pieces_named(scene.in.pieces, scene.in.design, fastening.part);
}

Holding::Holding(const Scene& scene) {
  const int count = static_cast<int>(scene.bodies.size());
  for (int k = 0; k < count; ++k) thing_.push_back(k);
  std::vector<char> on_wall(count);
  for (const Fastening& fastening : scene.in.design.fastenings)
    for (int a : pieces_of(scene, fastening)) {
      if (!wall_named(fastening.to).empty()) on_wall[a] = 1;
      for (int b : pieces_named(scene.in.pieces, scene.in.design, fastening.to)) join(thing_, a, b);
    }
  std::vector<int> firsts = thing_;
  std::sort(firsts.begin(), firsts.end());
  firsts.erase(std::unique(firsts.begin(), firsts.end()), firsts.end());
  things_ = static_cast<int>(firsts.size());
  walled_.resize(things_);
  for (int k = 0; k < count; ++k) {
    const auto at = std::lower_bound(firsts.begin(), firsts.end(), thing_[k]);
    thing_[k] = static_cast<int>(at - firsts.begin());
    walled_[thing_[k]] |= on_wall[k];
  }
}

}  // namespace nook::safe
