// The normal distribution function.
#pragma once

#include <cmath>
#include <numbers>

namespace nook {

/// Chance that a normal value of mean 0 and sd `sd` is at most x. Where sd is 0 the value is 0: 1
/// from x = 0 on, 0 below.
inline double normal_below(double x, double sd) {
  if (sd <= 0) return x >= 0 ? 1 : 0;
  return std::erfc(-x / sd / std::numbers::sqrt2) / 2;
}

}  // namespace nook
