// Figures of a piece that were written down in each other's place.
#pragma once

#include <optional>
#include <vector>

#include "shop/verify.h"

namespace nook {

/// A way in which figures get mixed up, and the piece as it was meant.
struct MixUp {
  bool keys = false;  // widths stand under heights; else each size stands before where it was taken
  PieceAsCut meant;
};

/// Every way in which a piece's figures may be mixed up; keys only where it has both of them.
std::vector<MixUp> mix_ups(const PieceAsCut& piece);

/// A size of a panel that is said to have been taken beyond it, however large it still may be:
/// `where` names it, `measured_mm` is where, `wanted_mm` how far the piece goes. Mm.
std::optional<CutFault> taken_beyond(const PieceAsCut& piece, const NeededPiece& needed);

}  // namespace nook
