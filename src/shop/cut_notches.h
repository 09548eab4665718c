// The notches of a piece to be cut.
#pragma once

#include "shop/cut.h"

namespace nook {

/// What is left of the fitted outline of a piece when its notches are cut out; the largest part.
Polygon notched(const CutInput& input, int piece, const NeededPiece& needed);

/// Lists the notches: square ones in a corner by width and height, the others by their outlines.
void add_notches(CutPiece& cut, const CutInput& input, int piece, const NeededPiece& needed);

}  // namespace nook
