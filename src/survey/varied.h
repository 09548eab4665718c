// A number with its slopes: forward-mode differentiation over unknowns and spots of the fields.
#pragma once

#include <cmath>
#include <vector>

#include "base/length.h"

namespace nook {

/// How much a number changes with one unknown or field spot.
struct Slope {
  int index = 0;
  double by = 0;
};

/// A value with its first derivatives (Griewank and Walther 2008, Evaluating Derivatives, ch. 3).
/// An index may occur more than once; its slopes add up.
struct Varied {
  double value = 0;
  std::vector<Slope> slopes;

  Varied() = default;
  Varied(double constant) : value(constant) {}
  Varied(double at, std::vector<Slope> by) : value(at), slopes(std::move(by)) {}
};

namespace detail {
/// value, with the slopes of a times ka and those of b times kb.
inline Varied joined(double value, const Varied& a, double ka, const Varied* b = nullptr,
                     double kb = 0) {
  Varied out(value);
  out.slopes.reserve(a.slopes.size() + (b ? b->slopes.size() : 0));
  for (const Slope& s : a.slopes) out.slopes.push_back({s.index, ka * s.by});
  if (b)
    for (const Slope& s : b->slopes) out.slopes.push_back({s.index, kb * s.by});
  return out;
}
}  // namespace detail

inline Varied operator+(const Varied& a, const Varied& b) {
  return detail::joined(a.value + b.value, a, 1, &b, 1);
}
inline Varied operator-(const Varied& a, const Varied& b) {
  return detail::joined(a.value - b.value, a, 1, &b, -1);
}
inline Varied operator-(const Varied& a) {
  return detail::joined(-a.value, a, -1);
}
inline Varied operator*(const Varied& a, const Varied& b) {
  return detail::joined(a.value * b.value, a, b.value, &b, a.value);
}
inline Varied operator/(const Varied& a, const Varied& b) {
  const double q = a.value / b.value;
  return detail::joined(q, a, 1 / b.value, &b, -q / b.value);
}
/// Sine and cosine of radians, exact at multiples of 90 degrees.
inline Varied sine(const Varied& a) {
  const Direction d = direction(Angle{a.value});
  return detail::joined(d.sin, a, d.cos);
}
inline Varied cosine(const Varied& a) {
  const Direction d = direction(Angle{a.value});
  return detail::joined(d.cos, a, -d.sin);
}
inline Varied tangent(const Varied& a) {
  const double t = std::tan(a.value);
  return detail::joined(t, a, 1 + t * t);
}
/// Length of (x, y, z); without slopes where it is zero.
inline Varied hypotenuse(const Varied& x, const Varied& y, double z = 0) {
  const double d = std::hypot(x.value, y.value, z);
  return d > 0 ? detail::joined(d, x, x.value / d, &y, y.value / d) : Varied(0);
}

}  // namespace nook
