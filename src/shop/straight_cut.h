// The best straight cut along a gap that is known point by point.
#pragma once

#include <vector>

#include "fit/fit_answer.h"

namespace nook {

/// How far a straight line lies out at any `at` of a gap's points: offset + slope x at, mm.
struct StraightCut {
  double offset = 0, slope = 0;
  double out(double at) const { return offset + slope * at; }
};

/// The straight line that is nowhere beyond the gap and leaves the least of its widest part open.
StraightCut straight_cut(std::vector<GapPoint> line);

}  // namespace nook
