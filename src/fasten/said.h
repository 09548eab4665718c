// Lengths and loads in the words and units of the job.
#pragma once

#include <string>

#include "base/notation.h"

namespace nook {

/// What an answer speaks: inches and pounds, or millimetres and kilograms.
struct Saying {
  Unit unit = Unit::inch;

  /// `15 5/16"`, `389 mm`.
  std::string length(double mm) const;
  /// The same, never less than it is, or never more.
  std::string at_least(double mm) const;
  std::string at_most(double mm) const;
  /// `363 lb`, `165 kg`: of a force in newtons.
  std::string load(double newtons) const;
  /// The step that holes are laid out to: 1/16 in or 1 mm.
  double step() const;
};

/// One pound or kilogram of load in newtons (standard gravity, CGPM 1901; pound, 1959).
inline constexpr double kNewtonsPerPound = 4.4482216152605;
inline constexpr double kNewtonsPerKilogram = 9.80665;

}  // namespace nook
