// The normal distribution function.
#pragma once

#include <cmath>
#include <numbers>

namespace nook {

/// Chance that a normal value of mean 0 and sd `sd` lies below x. Requires: sd > 0.
inline double normal_below(double x, double sd) {
  return std::erfc(-x / sd / std::numbers::sqrt2) / 2;
}

}  // namespace nook
