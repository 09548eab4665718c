// A piece as cut turned over or end for end: its readings then, and whether it suits its place.
#pragma once

#include <string>

#include "design/as_cut.h"
#include "shop/needed.h"

namespace nook {

/// How a piece is turned: over, its left to the right; over, its top to the bottom; in its plane,
/// end for end.
enum class Turn { sideways, endways, end_for_end };

/// Whether the turn brings the other face to the front.
bool turns_over(Turn turn);

/// The readings as they are once the piece is turned; `size`: its width and height as needed, mm.
PieceAsCut turned(PieceAsCut piece, Turn turn, Vec2 size);

/// A corner's name once the piece is turned: "lower left" is "lower right" sideways.
std::string turned_corner(std::string corner, Turn turn);

/// Whether a piece with this one's cutouts may be turned: each comes to lie where one is wanted,
/// within 1/32 in (chosen), and no notch stands between its corners.
bool may_turn(const NeededPiece& needed, Turn turn);

}  // namespace nook
