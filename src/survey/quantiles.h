// Quantiles of the normal, chi-squared, Student and tau distributions.
#pragma once

namespace nook {

/// x with P(N(0, 1) <= x) = chance; within 1e-15 relative for 1e-300 < chance < 1 - 1e-16.
double normal_quantile(double chance);

/// x with P(chi-squared with `freedom` degrees <= x) = chance; within 1e-12 relative.
double chi2_quantile(double chance, int freedom);
/// P(chi-squared with `freedom` degrees > x).
double chi2_tail(double x, int freedom);

/// x with P(Student's t with `freedom` degrees <= x) = chance.
double student_quantile(double chance, int freedom);

/// Two-sided limit of tau, the residual over its a-posteriori sd (Pope 1976): below sqrt(freedom).
/// Requires: freedom >= 2.
double tau_limit(double alpha, int freedom);

}  // namespace nook
