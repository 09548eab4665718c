// Rational approximations, incomplete gamma and beta functions, and bisection on them.
#include "survey/quantiles.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "base/invariant.h"

namespace nook {
namespace {

constexpr int kMostTerms = 2000;
constexpr double kTiny = 1e-300;

template <int N>
double polynomial(const double (&c)[N], double x) {
  static_assert(N == 8);
  return ((((((c[7] * x + c[6]) * x + c[5]) * x + c[4]) * x + c[3]) * x + c[2]) * x + c[1]) * x +
         c[0];
}

// Coefficients of Wichura 1988, algorithm AS 241, PPND16 (Applied Statistics 37, 477-484).
constexpr double kNearA[] = {3.3871328727963666080e0,  1.3314166789178437745e+2,
                             1.9715909503065514427e+3, 1.3731693765509461125e+4,
                             4.5921953931549871457e+4, 6.7265770927008700853e+4,
                             3.3430575583588128105e+4, 2.5090809287301226727e+3};
constexpr double kNearB[] = {1.0,
                             4.2313330701600911252e+1,
                             6.8718700749205790830e+2,
                             5.3941960214247511077e+3,
                             2.1213794301586595867e+4,
                             3.9307895800092710610e+4,
                             2.8729085735721942674e+4,
                             5.2264952788528545610e+3};
constexpr double kMidA[] = {1.42343711074968357734e0,  4.63033784615654529590e0,
                            5.76949722146069140550e0,  3.64784832476320460504e0,
                            1.27045825245236838258e0,  2.41780725177450611770e-1,
                            2.27238449892691845833e-2, 7.74545014278341407640e-4};
constexpr double kMidB[] = {1.0,
                            2.05319162663775882187e0,
                            1.67638483018380384940e0,
                            6.89767334985100004550e-1,
                            1.48103976427480074590e-1,
                            1.51986665636164571966e-2,
                            5.47593808499534494600e-4,
                            1.05075007164441684324e-9};
constexpr double kFarA[] = {6.65790464350110377720e0,  5.46378491116411436990e0,
                            1.78482653991729133580e0,  2.96560571828504891230e-1,
                            2.65321895265761230930e-2, 1.24266094738807843860e-3,
                            2.71155556874348757815e-5, 2.01033439929228813265e-7};
constexpr double kFarB[] = {1.0,
                            5.99832206555887937690e-1,
                            1.36929880922735805310e-1,
                            1.48753612908506148525e-2,
                            7.86869131145613259100e-4,
                            1.84631831751005468180e-5,
                            1.42151175831644588870e-7,
                            2.04426310338993978564e-15};

// P(a, x) by its series, for x < a + 1 (Abramowitz and Stegun 6.5.29).
double gamma_series(double a, double x) {
  double term = 1 / a, sum = term;
  for (int n = 1; n < kMostTerms && term > sum * 1e-17; ++n) sum += term *= x / (a + n);
  return sum * std::exp(-x + a * std::log(x) - std::lgamma(a));
}

// Q(a, x) by its continued fraction, for x >= a + 1 (Abramowitz and Stegun 6.5.31, Lentz's method).
double gamma_fraction(double a, double x) {
  double b = x + 1 - a, c = 1 / kTiny, d = 1 / b, h = d;
  for (int i = 1; i < kMostTerms; ++i) {
    const double an = -i * (i - a);
    b += 2;
    d = an * d + b;
    d = 1 / (std::abs(d) < kTiny ? kTiny : d);
    c = b + an / c;
    c = std::abs(c) < kTiny ? kTiny : c;
    h *= d * c;
    if (std::abs(d * c - 1) < 1e-16) break;
  }
  return h * std::exp(-x + a * std::log(x) - std::lgamma(a));
}

// Continued fraction of the incomplete beta function (Abramowitz and Stegun 26.5.8, Lentz).
double beta_fraction(double a, double b, double x) {
  double c = 1, d = 1 - (a + b) * x / (a + 1);
  d = 1 / (std::abs(d) < kTiny ? kTiny : d);
  double h = d;
  const auto take = [&](double term) {
    d = 1 + term * d;
    d = 1 / (std::abs(d) < kTiny ? kTiny : d);
    c = 1 + term / c;
    c = std::abs(c) < kTiny ? kTiny : c;
    h *= d * c;
  };
  for (int m = 1; m < kMostTerms; ++m) {
    take(m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m)));
    take(-(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1)));
    if (std::abs(d * c - 1) < 1e-16) break;
  }
  return h;
}

double incomplete_beta(double a, double b, double x) {
  if (x <= 0) return 0;
  const double front = std::exp(std::lgamma(a + b) - std::lgamma(a) - std::lgamma(b) +
                                a * std::log(x) + b * std::log1p(-x));
  return x < (a + 1) / (a + b + 2) ? front * beta_fraction(a, b, x) / a
                                   : 1 - front * beta_fraction(b, a, 1 - x) / b;
}

// P(|t| > x).
double student_tails(double x, int freedom) {
  return incomplete_beta(freedom / 2.0, 0.5, freedom / (freedom + x * x));
}

// The x in [0, inf) where a falling function is `target`.
template <class F>
double where_falls_to(double target, F&& f) {
  double low = 0, high = 1;
  while (f(high) > target) low = high, high *= 2;
  for (int i = 0; i < 200 && high - low > 1e-15 * high; ++i) {
    const double x = (low + high) / 2;
    (f(x) > target ? low : high) = x;
  }
  return (low + high) / 2;
}

}  // namespace

double normal_quantile(double chance) {
  require(chance > 0 && chance < 1, "a chance between 0 and 1");
  const double q = chance - 0.5;
  if (std::abs(q) <= 0.425) {
    const double r = 0.180625 - q * q;
    return q * polynomial(kNearA, r) / polynomial(kNearB, r);
  }
  double r = std::sqrt(-std::log(q < 0 ? chance : 1 - chance));
  const double x = r <= 5 ? polynomial(kMidA, r - 1.6) / polynomial(kMidB, r - 1.6)
                          : polynomial(kFarA, r - 5) / polynomial(kFarB, r - 5);
  return q < 0 ? -x : x;
}

double chi2_tail(double x, int freedom) {
  const double a = freedom / 2.0, half = x / 2;
  if (half <= 0) return 1;
  return half < a + 1 ? 1 - gamma_series(a, half) : gamma_fraction(a, half);
}

double chi2_quantile(double chance, int freedom) {
  require(freedom > 0, "degrees of freedom are positive");
  return where_falls_to(1 - chance, [&](double x) { return chi2_tail(x, freedom); });
}

double student_quantile(double chance, int freedom) {
  require(freedom > 0, "degrees of freedom are positive");
  const double tails = 2 * std::min(chance, 1 - chance);
  const double x = where_falls_to(tails, [&](double t) { return student_tails(t, freedom); });
  return chance < 0.5 ? -x : x;
}

double tau_limit(double alpha, int freedom) {
  require(freedom >= 2, "tau needs two degrees of freedom");
  const double t = student_quantile(1 - alpha / 2, freedom - 1);
  return std::sqrt(freedom) * t / std::sqrt(freedom - 1 + t * t);
}

}  // namespace nook
