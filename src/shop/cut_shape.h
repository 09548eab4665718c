// A piece as cut: its little least-squares adjustment from widths, heights and diagonals.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "design/as_cut.h"
#include "shop/needed.h"
#include "shop/normal_equations.h"

namespace nook {

inline constexpr double kFarOff = 50.8;  // mm, 2 in: further off than a cut goes wrong. Chosen

/// A width or a height that was measured: where, how much is wanted there, and how it hangs on the
/// corners (off = row . corners, near the solution), mm. `steep`: how much further off it is than
/// the slanted edge that it ends at, square to that; 1 between square edges. `scribed`: how much
/// less it is once the room's edges are scribed.
struct CutStation {
  double at = 0, wanted = 0;
  CornerVector row{};
  double off = 0, steep = 1, scribed = 0;
};

/// Readings of one piece that cannot all be right: one without which the others can.
struct CutDisagreement {
  enum class Of { width, height, diagonal };
  Of of = Of::width;
  int index = 0;                    // in its list, from 0
  double read = 0, others_say = 0;  // mm
};

/// How the four corners of a piece as cut stand off those needed, mm, and how surely; laid with its
/// lower left corner at its place and its bottom edge level.
struct CutShape {
  NormalEquations equations;
  CornerVector off{};
  double width = 0, height = 0;             // of the needed outline's bounds
  std::vector<CutStation> widths, heights;  // from the bottom up, from the left on
  CutStation crossed;                       // the first diagonal less the second
  std::optional<CutDisagreement> disagreement;
};

/// Whether a corner of the outline's bounds is far from every one of its own: a trapezoid, a
/// triangle, a clipped corner.
bool is_shaped(const Polygon& outline);

/// The needed outline, its corners moved by `off`; between them it moves evenly.
Polygon with_corners(const Polygon& outline, const CornerVector& off);

/// The vertices of an outline at the corners of `needed` (the same vertices, moved): lower left,
/// lower right, upper right, upper left.
std::array<Vec2, 4> corners_of(const Polygon& outline, const Polygon& needed);

/// The piece with each reading as a tape would take it from `outline`, which is the needed one with
/// its vertices moved.
PieceAsCut read_from(const Polygon& outline, PieceAsCut piece, const Polygon& needed);

/// The shape that the readings of `piece` (in the piece frame) say. `sd`: of one reading, mm; a
/// reading's own sd replaces it; 1 mm (chosen) in where it was taken comes on top. What no reading
/// says stays open by 100 mm, and out of square and parallel by 20 mm, or a fiftieth of the length
/// (chosen).
CutShape cut_shape(const PieceAsCut& piece, const NeededPiece& needed, double sd);

}  // namespace nook
