// Cholesky of an 8 by 8 matrix; normal draws by Box and Muller from splitmix64.
#include "shop/normal_equations.h"

#include <cmath>
#include <numbers>

#include "base/invariant.h"
#include "base/splitmix.h"

namespace nook {
namespace {

struct SplitMix {
  std::uint64_t state;

  std::uint64_t next() {
    const std::uint64_t mixed = split_mixed(state);
    state += kSplitMixStep;
    return mixed;
  }
  double uniform() { return (static_cast<double>(next() >> 11) + 0.5) * 0x1p-53; }
  double normal() {
    const double radius = std::sqrt(-2 * std::log(uniform()));
    return radius * std::cos(2 * std::numbers::pi * uniform());
  }
};

}  // namespace

NormalEquations::NormalEquations(double prior_sd) {
  for (int i = 0; i < kCorners; ++i) matrix_[i][i] = 1 / (prior_sd * prior_sd);
}

void NormalEquations::add(const CornerVector& row, double value, double sd) {
  const double weight = 1 / (sd * sd);
  for (int i = 0; i < kCorners; ++i) {
    right_[i] += weight * row[i] * value;
    for (int j = 0; j < kCorners; ++j) matrix_[i][j] += weight * row[i] * row[j];
  }
}

void NormalEquations::factor() {
  for (int j = 0; j < kCorners; ++j)
    for (int i = j; i < kCorners; ++i) {
      double sum = matrix_[i][j];
      for (int k = 0; k < j; ++k) sum -= matrix_[i][k] * matrix_[j][k];
      if (i == j) require(sum > 0, "normal equations with a prior are positive definite");
      matrix_[i][j] = i == j ? std::sqrt(sum) : sum / matrix_[j][j];
    }
}

CornerVector NormalEquations::lower_solved(CornerVector b) const {
  for (int i = 0; i < kCorners; ++i) {
    for (int k = 0; k < i; ++k) b[i] -= matrix_[i][k] * b[k];
    b[i] /= matrix_[i][i];
  }
  return b;
}

CornerVector NormalEquations::upper_solved(CornerVector b) const {
  for (int i = kCorners - 1; i >= 0; --i) {
    for (int k = i + 1; k < kCorners; ++k) b[i] -= matrix_[k][i] * b[k];
    b[i] /= matrix_[i][i];
  }
  return b;
}

CornerVector NormalEquations::solution() const {
  return upper_solved(lower_solved(right_));
}

double NormalEquations::variance(const CornerVector& row) const {
  double sum = 0;
  for (const double x : lower_solved(row)) sum += x * x;
  return sum;
}

std::vector<CornerVector> NormalEquations::draws(int count, std::uint64_t seed) const {
  SplitMix random{seed};
  std::vector<CornerVector> all;
  for (int n = 0; n < count; ++n) {
    CornerVector white;
    for (double& x : white) x = random.normal();
    all.push_back(upper_solved(white));
  }
  return all;
}

}  // namespace nook
