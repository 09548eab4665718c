// The edges of a piece that are not cut square: tapers, scribes, wood left wild.
#pragma once

#include "shop/cut.h"

namespace nook {

/// Lists them for one piece of the fit.
void add_edges(CutPiece& cut, const CutInput& input, int piece, const NeededPiece& needed);

}  // namespace nook
