// Edge and end distances of a face.
#include "fasten/free_face.h"

#include <algorithm>
#include <limits>

#include "solid/boolean.h"

namespace nook {
namespace {

constexpr double kTouch = 1e-6;  // mm; a hole exactly at its distance is good

}  // namespace

FreeFace::FreeFace(const Piece& piece, const Design& design, const Regions& blocked,
                   const Distances& distances)
    : wood_(wood_of(piece)), distances_(distances) {
  if (!blocked.empty()) wood_ = subtract(wood_, blocked);
  const StockKind kind = design.stock[piece.drawn->stock].kind;
  has_grain_ = kind != StockKind::plywood;
  // Lumber runs along u; glued-up boards along their longer side (common practice, no source).
  const Box2 box = box_of(piece.drawn->outline);
  const Vec2 span = box.high - box.low;
  if (kind == StockKind::board && span.y > span.x) grain_ = {0, 1};
}

double FreeFace::end_distance(Vec2 uv) const {
  if (!has_grain_) return std::numeric_limits<double>::infinity();
  for (const Region& region : wood_)
    for (const Stretch& s : inside(region, uv, grain_))
      if (s.from <= 0 && s.to >= 0) return std::min(-s.from, s.to);
  return 0;
}

bool FreeFace::free(Vec2 uv) const {
  for (const Region& region : wood_)
    if (contains(region, uv) && border_distance(region, uv) >= distances_.edge - kTouch)
      return end_distance(uv) >= distances_.end - kTouch;
  return false;
}

}  // namespace nook
