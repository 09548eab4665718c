// The exact Gaussian answer for a two-wall survey, slowly: dense kernels, numeric derivatives.
#pragma once

#include "base/measured.h"
#include "room/survey.h"

namespace nook::test {

/// What the walls are really like.
struct Statistics {
  double flatness = 2, reach = 400, lean = 0.01;  // mm, mm, mm per mm
};

/// The straight distance between exact marks on the two walls at a height (mm). Takes diagonals,
/// levels, plumb lines, strings and straightedges. Shares no code with the adjustment.
Measured dense_diagonal(const Survey& survey, const Statistics& known, double first, double second,
                        double height);

}  // namespace nook::test
