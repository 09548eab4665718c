// Readings as they are said on site: `41 3/8 strong`, `3' 5 3/8"`, `104.2 cm`, and lengths printed
// back.
#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "base/length.h"

namespace nook {

/// What is taped is no longer than this, 100 km (chosen): survey networks are read as well as
/// rooms.
inline constexpr double kLongestMm = 1e8;

enum class Unit { inch, mm, cm };

/// Millimeters in one of the unit.
constexpr double millimetres_in(Unit unit) {
  return unit == Unit::inch ? kMillimetresPerInch : unit == Unit::cm ? 10 : 1;
}

/// Why a text is not a reading: the part of it that is wrong, in characters from its start.
struct NotationFault {
  int at = 0;
  int width = 1;
  std::string what;
  std::string code;
  std::string help;
};

/// A length as typed. `smallest_mark` is the mark that `strong` and `shy` halve.
struct Notation {
  Length value;         // with strong, shy and burned worked in
  bool burned = false;  // the tape was held at a burned mark
  bool metric = false;  // written in mm, cm or m
};

/// The length that `text` says; a bare number is in `unit`. `smallest_mark` is what the tape is
/// read to; for a reading in the other system it is 1/16 in or 1 mm. Fractions, primes and double
/// primes may be Unicode; a decimal comma is refused with a hint.
tl::expected<Notation, NotationFault> read_length(std::string_view text, Unit unit,
                                                  Length smallest_mark);

/// How lengths are printed: in which unit, rounded to which step.
struct Rounding {
  Unit unit = Unit::inch;
  Length step = inches(1.0 / 16);
};
/// The usual step for a unit: 1/16 in, 1 mm, 0.1 cm.
Rounding usual_rounding(Unit unit);

/// `41 3/8`, `1042`, `104.2`, without a unit sign; never `-0`. Reads back to the same value.
std::string written(Length value, Rounding rounding);
/// The same with its unit: `41 3/8"`, `1042 mm`, `104.2 cm`.
std::string with_unit(Length value, Rounding rounding);
/// A plus-or-minus, never rounded down to nothing: `1/16"`, or `under 1/16"`.
std::string give_or_take(Length value, Rounding rounding);

}  // namespace nook
