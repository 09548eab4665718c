// What of a blank is no rectangle: its outline, and the edges that run neither level nor upright.
#pragma once

#include "shop/cut.h"

namespace nook {

/// Fills in `contour`, `sides` and `slants` of a piece from its blank (piece frame, before
/// notching).
/// 1. The contour stays empty where the blank is a rectangle, or where only edges that are tapered
///    or scribed in the shop make it none: those are told by themselves.
/// 2. Slants are told where each side of the blank is one straight edge at most.
void add_slants(CutPiece& cut, const CutInput& input, const NeededPiece& needed,
                const Polygon& blank);

}  // namespace nook
