// Whether the wood left wild was still on a piece when it was measured.
#pragma once

#include "design/as_cut.h"
#include "shop/needed.h"

namespace nook {

/// What a piece was measured on, in its own frame.
struct WildOn {
  Polygon outline;  // as it leaves the shop, with the wild edges that its sizes say are on
  double across = 0, up = 0;  // of them, left and right together and bottom and top together, mm
};

/// Wild edges are taken as on where the sizes across them say that more than half of them is. The
/// readings are as seen from the front.
WildOn wild_on(const PieceAsCut& seen, const NeededPiece& needed);

}  // namespace nook
