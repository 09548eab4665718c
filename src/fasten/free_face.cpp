// Edge and end distances of a face.
#include "fasten/free_face.h"

#include <algorithm>
#include <limits>

#include "design/grain.h"
#include "solid/boolean.h"

namespace nook {
namespace {

constexpr double kTouch = 1e-6;  // mm; a hole exactly at its distance is good

}  // namespace

FreeFace::FreeFace(const Piece& piece, const Design& design, const Regions& blocked,
                   const Distances& distances)
    : wood_(wood_of(piece)), distances_(distances) {
  if (!blocked.empty()) wood_ = subtract(wood_, blocked);
  const Stock& stock = design.stock[piece.drawn->stock];
  has_grain_ = stock.kind != StockKind::plywood;
  if (has_grain_ && grain_along_v(*piece.drawn, stock)) grain_ = {0, 1};
}

double FreeFace::end_distance(Vec2 uv) const {
  if (!has_grain_) return std::numeric_limits<double>::infinity();
  for (const Region& region : wood_)
    for (const Stretch& s : inside(region, uv, grain_))
      if (s.from <= 0 && s.to >= 0) return std::min(-s.from, s.to);
  return 0;
}

FreeFace FreeFace::with(const Distances& distances) const {
  FreeFace other = *this;
  other.distances_ = distances;
  return other;
}

bool FreeFace::free(Vec2 uv) const {
  for (const Region& region : wood_)
    if (contains(region, uv) && border_distance(region, uv) >= distances_.edge - kTouch)
      return end_distance(uv) >= distances_.end - kTouch;
  return false;
}

}  // namespace nook
