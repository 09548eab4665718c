// TR12-2015 tables 1-1 and 1-2: each mode but the crushing ones is a root of A P^2 + B P + C = 0.
#include "fasten/yield.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

double root(double a, double b, double c) {
  return (-b + std::sqrt(b * b - 4 * a * c)) / (2 * a);
}

}  // namespace

std::array<Yield, 6> yields(const Shear& shear, const Reduction& reduction) {
  const double qm = shear.main_strength * shear.diameter, lm = shear.main_length;
  const double qs = shear.side_strength * shear.diameter, ls = shear.side_length;
  const double g = shear.gap, m = shear.moment;
  const double side = qs * ls * ls / 4, main = qm * lm * lm / 4;
  return {{
      {"Im", qm * lm / reduction.crushing},
      {"Is", qs * ls / reduction.crushing},
      {"II",
       root(1 / (4 * qs) + 1 / (4 * qm), ls / 2 + g + lm / 2, -side - main) / reduction.turning},
      {"IIIm", root(1 / (2 * qs) + 1 / (4 * qm), g + lm / 2, -m - main) / reduction.hinges},
      {"IIIs", root(1 / (4 * qs) + 1 / (2 * qm), ls / 2 + g, -side - m) / reduction.hinges},
      {"IV", root(1 / (2 * qs) + 1 / (2 * qm), g, -m - m) / reduction.hinges},
  }};
}

Yield least_yield(const Shear& shear, const Reduction& reduction) {
  const auto all = yields(shear, reduction);
  return *std::min_element(all.begin(), all.end(),
                           [](const Yield& a, const Yield& b) { return a.pounds < b.pounds; });
}

}  // namespace nook
