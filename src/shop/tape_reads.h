// What a tape reads from an outline with moved corners, each reading with what it is worth.
#pragma once

#include <functional>
#include <vector>

#include "shop/cut_shape.h"
#include "shop/outline.h"

namespace nook {

/// What a tape reads from an outline, mm.
using Reads = std::function<double(const Polygon&)>;

/// What a tape reads at a height, or at a distance from the left, held where it is on the needed
/// outline.
Reads width_at(const Polygon& needed, double at);
Reads height_at(const Polygon& needed, double at);
/// What it reads from corner to corner, the first diagonal or the second; and the first less the
/// second.
Reads diagonal(const Polygon& needed, size_t which);
Reads crossed(const Polygon& needed);

/// One thing a tape read, and what it would read from an outline.
struct Taped {
  double value, sd;
  Reads from;
  CutDisagreement::Of of = CutDisagreement::Of::width;
  int index = 0;
};

/// Sd of where along a piece a reading is taken, mm. Chosen.
inline constexpr double kAstray = 1;

/// The readings of a piece. `sd`: of one, mm; a reading's own replaces it; 1 mm (chosen) in where
/// it was taken comes on top.
std::vector<Taped> tape_reads(const PieceAsCut& piece, const Polygon& outline, double sd);

/// How a reading hangs on the corners of the outline, near `off`.
CornerVector slope(const Reads& from, const Polygon& outline, const CornerVector& off);

}  // namespace nook
