// The furthest point between two kept ones is kept too, until none strays.
#include "solid/simplified.h"

#include <cstddef>
#include <utility>

#include "solid/polygon.h"

namespace nook {
namespace {

// Adds the points of `ring` strictly between two of its indices that have to be kept.
void keep_between(const Polygon& ring, std::pair<std::size_t, std::size_t> ends, double stray,
                  Polygon& kept) {
  const auto [first, last] = ends;
  std::size_t far = first;
  double most = stray;
  for (std::size_t i = first + 1; i < last; ++i)
    if (const double off = segment_distance(ring[first], ring[last], ring[i]); off > most)
      most = off, far = i;
  if (far == first) return;
  keep_between(ring, {first, far}, stray, kept);
  kept.push_back(ring[far]);
  keep_between(ring, {far, last}, stray, kept);
}

}  // namespace

Polygon simplified(const Polygon& outline, double stray) {
  std::size_t far = 0;
  for (std::size_t i = 1; i < outline.size(); ++i)
    if (norm(outline[i] - outline[0]) > norm(outline[far] - outline[0])) far = i;
  Polygon ring = outline;
  ring.push_back(outline[0]);
  Polygon kept{outline[0]};
  keep_between(ring, {0, far}, stray, kept);
  if (far > 0) kept.push_back(outline[far]);
  keep_between(ring, {far, outline.size()}, stray, kept);
  return kept;
}

}  // namespace nook
