// Lengths and angles as types, so that a bare double never says inches to code that hears
// millimeters.
#pragma once

#include <compare>
#include <numbers>

namespace nook {

/// A distance or a signed offset. Millimeters inside; every conversion is named.
struct Length {
  double mm = 0;

  friend constexpr auto operator<=>(Length, Length) = default;
  friend constexpr Length operator+(Length a, Length b) { return {a.mm + b.mm}; }
  friend constexpr Length operator-(Length a, Length b) { return {a.mm - b.mm}; }
  friend constexpr Length operator-(Length a) { return {-a.mm}; }
  friend constexpr Length operator*(double k, Length a) { return {k * a.mm}; }
  friend constexpr Length operator*(Length a, double k) { return {k * a.mm}; }
  friend constexpr Length operator/(Length a, double k) { return {a.mm / k}; }
  friend constexpr double operator/(Length a, Length b) { return a.mm / b.mm; }
  constexpr Length& operator+=(Length b) { return mm += b.mm, *this; }
  constexpr Length& operator-=(Length b) { return mm -= b.mm, *this; }
};

/// Exact by definition (international yard and pound agreement, 1959).
inline constexpr double kMillimetresPerInch = 25.4;

constexpr Length millimetres(double x) {
  return {x};
}
constexpr Length inches(double x) {
  return {x * kMillimetresPerInch};
}
constexpr double in_inches(Length x) {
  return x.mm / kMillimetresPerInch;
}

/// An angle; radians inside, degrees at every border.
struct Angle {
  double rad = 0;

  friend constexpr auto operator<=>(Angle, Angle) = default;
  friend constexpr Angle operator+(Angle a, Angle b) { return {a.rad + b.rad}; }
  friend constexpr Angle operator-(Angle a, Angle b) { return {a.rad - b.rad}; }
  friend constexpr Angle operator-(Angle a) { return {-a.rad}; }
};

constexpr Angle degrees(double x) {
  return {x * std::numbers::pi / 180};
}
constexpr double in_degrees(Angle x) {
  return x.rad * 180 / std::numbers::pi;
}

/// Sine and cosine, exact at multiples of 90 degrees (a square design stays square to the last
/// bit).
struct Direction {
  double cos = 1, sin = 0;
};
Direction direction(Angle angle);

}  // namespace nook
