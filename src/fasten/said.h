// Lengths and loads in the words and units asked for.
#pragma once

#include <string>

#include "base/notation.h"
#include "room/survey.h"

namespace nook {

/// What an answer speaks: inches and pounds, or millimeters and kilograms.
struct Saying {
  Rounding rounding;
  Length grid;  // the step that holes are laid out to, on the tape in hand: 1/16 in or 1 mm

  /// As a survey is to be answered.
  explicit Saying(const Survey& survey)
      : rounding(survey.said()), grid(usual_rounding(survey.units).step) {}
  /// In one unit, rounded as usual.
  explicit Saying(Unit unit) : rounding(usual_rounding(unit)), grid(rounding.step) {}

  /// `15 5/16"`, `389 mm`.
  std::string length(double mm) const;
  /// The same, never less than it is, or never more.
  std::string at_least(double mm) const;
  std::string at_most(double mm) const;
  /// Length or thickness of a screw: in millimeters where the job is in centimeters (common
  /// practice, no source).
  std::string screw(double mm) const;
  /// The next screw that is sold, mm, no shorter or no longer: by quarter inches up to 3 in and
  /// halves beyond, by 5 mm up to 60 and 10 beyond (common practice, no source).
  double sold_from(double mm) const;
  double sold_up_to(double mm) const;
  /// `363 lb`, `165 kg`: of a force in newtons.
  std::string load(double newtons) const;
  /// `grid` in millimeters.
  double step() const { return grid.mm; }
};

/// One pound or kilogram of load in newtons (standard gravity, CGPM 1901; pound, 1959).
inline constexpr double kNewtonsPerPound = 4.4482216152605;
inline constexpr double kNewtonsPerKilogram = 9.80665;

}  // namespace nook
