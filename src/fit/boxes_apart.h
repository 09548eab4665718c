// Outlines too far apart for an exact Boolean to find anything.
#pragma once

#include "solid/boolean.h"

namespace nook {

/// Whether the boxes round two outlines share nothing, rounded to the grid of Booleans or not.
inline bool boxes_apart(const Polygon& a, const Polygon& b) {
  const Box2 p = box_of(a), q = box_of(b);
  return p.low.x > q.high.x + kOutlineGrid || q.low.x > p.high.x + kOutlineGrid ||
         p.low.y > q.high.y + kOutlineGrid || q.low.y > p.high.y + kOutlineGrid;
}

}  // namespace nook
