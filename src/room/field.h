// The hump-and-hollow field of a surface: a Gaussian field written as a sum of fixed functions.
#pragma once

#include <memory>
#include <vector>

#include "base/vector.h"

namespace nook {

/// Sine functions on a rectangle wider than the surface. A field with independent weights
/// w_k ~ N(0, prior_sd_k^2) on them has covariance sd^2 exp(-d^2 / (2 reach^2)) between any two
/// points of the surface, to within 1e-4 of sd^2 (Solin and Sarkka 2020, Hilbert space methods for
/// reduced-rank Gaussian process regression, section 3).
class FieldBasis {
 public:
  /// For points in [low, high] (mm); outside it the field goes on as it is at the rectangle's edge.
  /// Requires: reach >= 200 mm, low < high.
  FieldBasis(Vec2 low, Vec2 high, double reach);

  Vec2 low() const { return inside_low_; }
  Vec2 high() const { return inside_high_; }
  /// How many times function k crosses zero along x and along y.
  struct Mode {
    int x, y;
  };
  Mode mode(int k) const { return modes_[k]; }
  int size() const { return static_cast<int>(modes_.size()); }
  double reach() const { return reach_; }
  /// The prior sd of each weight, for a field of sd 1 mm.
  const std::vector<double>& prior_sd() const { return prior_sd_; }
  /// The value of each function at `at`.
  std::vector<double> values(Vec2 at) const;
  /// Sum of weights x functions at `at`, mm.
  double sum(const std::vector<double>& weights, Vec2 at) const;

  /// The weights of the sines along x at one y, and their sum at x: `sum` in two steps, for many x.
  std::vector<double> row(const std::vector<double>& weights, double y) const;
  double row_sum(const std::vector<double>& row, double x) const;

 private:
  void sines(Vec2 at, std::vector<double>& x, std::vector<double>& y) const;
  template <class Act>
  void each_x(Act act) const;

  Vec2 inside_low_, inside_high_;  // where points may be
  Vec2 low_, span_;                // of the sines
  double reach_;
  int count_x_, count_y_;
  std::vector<Mode> modes_;
  std::vector<double> prior_sd_;
};

/// One field: shared functions and its own weights. Without functions it is flat.
struct Field {
  std::shared_ptr<const FieldBasis> basis;
  std::vector<double> weights;

  double at(Vec2 point) const { return basis ? basis->sum(weights, point) : 0; }
};

/// A field along one line of constant y.
class FieldRow {
 public:
  FieldRow(const Field& field, double y) : basis_(field.basis.get()) {
    if (basis_) row_ = basis_->row(field.weights, y);
  }
  double at(double x) const { return basis_ ? basis_->row_sum(row_, x) : 0; }

 private:
  const FieldBasis* basis_;
  std::vector<double> row_;
};

}  // namespace nook
