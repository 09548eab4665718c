// Errors of reading, of setting the ends, and of the tape itself.
#include "survey/worth.h"

#include <cmath>

namespace nook {
namespace {

// Errors of setting the ends, mm. Chosen: 1/16 in for a tape bent into an inside corner, half of
// that with the case length, a block or a burned inch, 0.3 at marks and edges.
constexpr double kBent = 1.6, kSquareOn = 0.8, kMarks = 0.3;

double setting_error(const Tape& tape, const Reading& reading, Ends ends) {
  if (ends == Ends::marks) return kMarks;
  return tape.corner == TapeEnd::bent && !reading.burned ? kBent : kSquareOn;
}

}  // namespace

double permitted_error(TapeClass accuracy, double length_mm) {
  // EU 2014/32 annex MI-008 (OIML R 35-1), maximum permissible errors.
  constexpr double kSame = 1e-6;  // mm: 3 m typed in inches is still 3 m
  const double metres = std::ceil((std::abs(length_mm) - kSame) / 1000);
  switch (accuracy) {
    case TapeClass::I:
      return 0.1 + 0.1 * metres;
    case TapeClass::II:
      return 0.3 + 0.2 * metres;
    case TapeClass::III:
      break;
  }
  return 0.6 + 0.4 * metres;
}

double rounding_sd(const Survey& survey, const Reading& reading) {
  const Length mark = reading.smallest_mark.mm > 0 ? reading.smallest_mark : survey.tape.read_to;
  return mark.mm / std::sqrt(12.0);  // even over one smallest mark
}

Worth worth(const Survey& survey, const Reading& reading, Ends ends, double more_sd) {
  if (reading.sd) return {reading.sd->mm, 0};
  const double setting = setting_error(survey.tape, reading, ends);
  // What touches is not read off the tape.
  const double tape =
      reading.value.mm == 0
          ? 0
          : permitted_error(survey.tape.accuracy, reading.value.mm) / std::sqrt(3.0);
  return {std::hypot(rounding_sd(survey, reading), setting, more_sd), tape};
}

}  // namespace nook
