// Figures of a piece that were written down in each other's place.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "shop/verify.h"

namespace nook {

/// A way in which figures get mixed up, and the piece as it was meant.
struct MixUp {
  std::string what;  // "keys": widths stand under heights; "pairs": a size stands before its place
  PieceAsCut meant;
};

/// Every way in which a piece's sizes may be mixed up; keys only where it has both of them.
std::vector<MixUp> mix_ups(const PieceAsCut& piece);

/// The piece with width and height of its notches changed.
PieceAsCut with_notches_turned(PieceAsCut piece);

/// A size of a panel that is said to have been taken beyond it, however large it still may be:
/// `where` names it, `measured_mm` is where, `wanted_mm` how far the piece goes. Mm.
std::optional<CutFault> taken_beyond(const PieceAsCut& piece, const NeededPiece& needed);

}  // namespace nook
