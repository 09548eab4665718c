// Weighted least squares with priors for one linear problem, and everything its covariance says.
#pragma once

#include <memory>
#include <vector>

#include "survey/dense.h"
#include "survey/whitening.h"

namespace nook {

/// misfit = design x + field w + e, with e ~ N(0, sd^2), w ~ N(0, I), and x ~ N(prior_mean,
/// prior_sd^2) where prior_sd > 0, else free.
struct Linear {
  Dense design;                    // one row a reading
  std::vector<double> misfit, sd;  // sd > 0
  std::vector<double> prior_sd, prior_mean;
};

/// A linear function of the unknowns and weights.
struct Functional {
  std::vector<double> x, w;
};

/// The solution (Koch 1999, Parameter Estimation and Hypothesis Testing in Linear Models, ch. 3;
/// fields as in Rasmussen and Williams 2006, section 2.7).
/// 1. What is free and not determined by the readings is left where it is (its step is 0).
/// 2. W = V^-1 - V^-1 A N^-1 A' V^-1 over readings with unit sd, V from errors and fields, N with
///    the priors: errors e = W misfit, redundancy numbers r = diag W (Baarda 1968).
class LeastSquares {
 public:
  /// `whitening` is that of the field divided by sd row by row. `all_seen`: it is known that the
  /// readings determine all that is free.
  LeastSquares(const Linear& linear, std::shared_ptr<const Whitening> whitening,
               bool all_seen = false);
  ~LeastSquares();
  LeastSquares(LeastSquares&&) noexcept;

  /// x and w of a problem like this one, its design hardly changed, with this one's N: sooner than
  /// anew. Where it says to stay (x = 0) the other problem itself does: their gradients are the
  /// same. Requires: the same sds, and priors of the same sd.
  struct Step {
    std::vector<double> x, w;
  };
  Step step(const Linear& linear) const;

  const std::vector<double>& x() const;
  const std::vector<double>& w() const;
  /// What is left of each misfit: reading less model.
  const std::vector<double>& error() const;
  /// Sum of squares of errors, weights and priors, each over its sd.
  double chi2() const;
  /// Of the free unknowns.
  int rank() const;
  /// Orthonormal directions of the unknowns that no reading sees, one a column, columns of the
  /// design scaled to unit length.
  const Dense& unseen() const;
  /// Whether the readings determine an unknown, or it has a prior.
  bool determined(int unknown) const;
  /// Redundancy number of each reading.
  std::vector<double> redundancy() const;
  /// W v, for v over the sd of each reading: what of v the unknowns and fields cannot explain.
  std::vector<double> unexplained(const std::vector<double>& v) const;
  /// Restricted log likelihood of the readings, less a constant (Patterson and Thompson 1971).
  double log_likelihood() const;

  /// Whether the readings or priors determine a functional.
  bool determined(const Functional& functional) const;
  /// Posterior covariances of functionals, each with each. Requires: all are determined.
  Dense covariance(const std::vector<Functional>& functionals) const;

  const std::shared_ptr<const Whitening>& whitening() const;

  struct Parts;

 private:
  std::unique_ptr<Parts> parts_;
};

}  // namespace nook
