// Makes readings that share humps and hollows independent of one another.
#pragma once

#include <memory>
#include <vector>

#include "survey/dense.h"

namespace nook {

/// For readings with independent errors of unit sd on top of a shared field with weights N(0, I):
/// their covariance is V = I + F F', F (readings x weights) their field.
/// 1. half(X)' half(X) = X' V^-1 X.
/// 2. Works in reading space up to 600 readings, else in weight space (Woodbury): the same results.
///    In reading space the readings of different surfaces cost nothing together.
class Whitening {
 public:
  enum class Space { whichever, readings, weights };
  /// `blocks`: where in the columns a new surface starts, so that what it does not touch costs
  /// nothing.
  explicit Whitening(Dense field, std::vector<int> blocks = {}, Space space = Space::whichever);
  /// `other` with the first `columns` of its field `by` times as large: sooner than anew.
  Whitening(const Whitening& other, int columns, double by);
  ~Whitening();

  /// How many.
  int weights() const;
  /// F X and F' X.
  Dense times(const Dense& x) const;
  Dense transposed_times(const Dense& x) const;
  /// A square root of V^-1 times each column of X.
  Dense half(const Dense& x) const;
  /// V^-1 X from half(X).
  Dense rest(const Dense& half) const;
  /// V^-1 X.
  Dense solve(const Dense& x) const;
  /// log det V.
  double log_determinant() const;
  /// The diagonal of V^-1.
  std::vector<double> inverse_diagonal() const;

 private:
  struct Base;
  struct Parts;
  std::unique_ptr<const Parts> parts_;
};

}  // namespace nook
