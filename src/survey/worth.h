// What one reading is worth: its own standard deviation and its share of the tape's error.
#pragma once

#include "room/survey.h"

namespace nook {

/// sd: of the reading by itself. tape: what one unit of the shared tape scale, N(0, 1), adds to it.
/// Both mm. A reading's own `sd` replaces both.
struct Worth {
  double sd = 0;
  double tape = 0;
};

/// Where the ends of the tape are set.
enum class Ends { marks, inside_corner };

/// Greatest permitted error of a tape for a length, mm, without the share of a hook: 0.1 + 0.1 L,
/// 0.3 + 0.2 L, 0.6 + 0.4 L for class I, II, III, L in metres rounded up to the next whole one.
double permitted_error(TapeClass accuracy, double length_mm);

/// The worth of a tape reading; `more_sd` is an error that comes on top (mm).
Worth worth(const Survey& survey, const Reading& reading, Ends ends, double more_sd = 0);

/// The error of reading to the smallest mark, mm.
double rounding_sd(const Survey& survey, const Reading& reading);

/// The error of framing squares and angle finders at the end of their blade, mm. Chosen.
inline constexpr double kBladeError = 0.8;

}  // namespace nook
