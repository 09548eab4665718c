// What a piece was like when it was measured: wild wood still on, or off.
#pragma once

#include "design/as_cut.h"
#include "shop/needed.h"

namespace nook {

/// What a piece was measured on, in its own frame.
struct MeasuredOn {
  Polygon outline;            // near what its sizes say
  double across = 0, up = 0;  // how much wider and higher it is than as it leaves the shop, mm
};

/// Wild edges are taken as on where the sizes across them say that more than half of them is, and
/// not much more. The readings are as seen from the front.
MeasuredOn measured_on(const PieceAsCut& seen, const NeededPiece& needed);

}  // namespace nook
