// The best straight line under a run of gaps: a taper, or the edge of a filler strip.
#pragma once

#include <vector>

#include "base/vector.h"

namespace nook {

struct StraightCut {
  double at = 0, slope = 0;  // the line: gap = at + slope t
  double left = 0;           // the greatest gap that is left above it
};

/// The line that stays at or below every (t, gap) and leaves the least greatest gap above it; of
/// equal ones the flattest. Requires: at least one point.
StraightCut straight_cut(std::vector<Vec2> gaps);

}  // namespace nook
