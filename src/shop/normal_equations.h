// Least squares with a few unknowns: normal equations, Cholesky, draws from what is left open.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

namespace nook {

/// The four corners of a piece, u and v of each: lower left, lower right, upper right, upper left.
inline constexpr int kCorners = 8;
using CornerVector = std::array<double, kCorners>;

/// sum of ((row . x - value) / sd)^2, with a prior N(0, prior_sd^2) on each unknown.
/// 1. `solution` is its least; `variance` and `draws` are those of the normal posterior.
/// 2. Requires: prior_sd > 0 and every sd > 0, so that the matrix is positive definite.
class NormalEquations {
 public:
  explicit NormalEquations(double prior_sd);

  void add(const CornerVector& row, double value, double sd);
  void factor();  // call once, after the last add

  CornerVector solution() const;
  /// The variance of row . x.
  double variance(const CornerVector& row) const;
  /// Deviations from the solution, the same on every run.
  std::vector<CornerVector> draws(int count, std::uint64_t seed) const;

 private:
  CornerVector lower_solved(CornerVector b) const;
  CornerVector upper_solved(CornerVector b) const;

  std::array<CornerVector, kCorners> matrix_{};  // after factor(): its lower Cholesky factor
  CornerVector right_{};
};

}  // namespace nook
