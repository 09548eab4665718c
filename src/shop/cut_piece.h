// One piece of the cutting list.
#pragma once

#include "shop/cut.h"

namespace nook {

/// The entry of one piece of a fit. `needed` is that piece as needed.
CutPiece cut_piece(const CutInput& input, int piece, const NeededPiece& needed);

/// The outline of the blank before it is squared up: as it leaves the shop, wild edges on.
Polygon blank_outline(const CutInput& input, int piece, const NeededPiece& needed);

}  // namespace nook
