// A number and how surely it is known.
#pragma once

namespace nook {

/// A value with its standard deviation, both in the same unit (millimeters unless the name says
/// else).
struct Measured {
  double value = 0;
  double sd = 0;
};

/// Two-sided 95 % of a normal distribution: every printed plus-or-minus.
inline constexpr double kTwoSided95 = 1.959963984540054;

/// One-sided 95 %: how far a gap or a limit stands off surely enough.
inline constexpr double kOneSided95 = 1.6448536269514722;

}  // namespace nook
