// Takes a tape to a polygon: what a person would write down about a piece as cut.
#pragma once

#include <random>
#include <string>

#include "base/vector.h"
#include "design/as_cut.h"

namespace nook::sample {

/// Reads to `mark` (mm; 0 = exactly) with an error of `sd` at each reading.
struct Taping {
  double mark = 0;
  double sd = 0;
  std::mt19937* random = nullptr;

  Length read(double mm) const;
};

/// Widths 50 mm from bottom and top, heights 50 mm from left and right, both diagonals, of a
/// quadrilateral lower left, lower right, upper right, upper left. Found by stepping along its
/// edges.
PieceAsCut taped(const std::string& part, const Polygon& corners, const Taping& taping);

}  // namespace nook::sample
