// A tape held level across an outline: which two edges it touches, and what it reads.
#pragma once

#include "base/vector.h"

namespace nook {

/// A tape across a piece, level at `v` of the outline that it was chosen on.
class LevelTape {
 public:
  /// 1. It touches the outermost edges that cross the level.
  /// 2. At the piece's end, or up to 1/4 in past a corner, those are the edges that run into it: a
  ///    tape along the top reads from side to side, however the top lies.
  LevelTape(const Polygon& outline, double v);

  /// What it reads `at` above the lowest point of an outline with the same edges, its corners
  /// anywhere: the edges go on in line up to 1/4 in beyond the outline's ends.
  double read(const Polygon& outline, double at) const;

 private:
  std::size_t from_ = 0, to_ = 0;  // edges, by their first points
};

}  // namespace nook
