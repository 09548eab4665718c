// The even spacing that a wall's studs follow, as far as those found show it.
#pragma once

#include <optional>
#include <vector>

#include "base/measured.h"

namespace nook {

/// Studs stand at phase + n x spacing, each off by a jitter; those that do not are extra ones.
struct StudPattern {
  double spacing = 0, phase = 0;  // base-line mm
  double var_spacing = 0, cov = 0, var_phase = 0;
  double certainty = 0;                    // chance that this pattern is the wall's
  std::vector<std::optional<int>> number;  // n of each stud found; none outside the pattern

  double centre(int n) const { return phase + n * spacing; }
  /// Sd of stud n where none was found, jitter included.
  double sd(int n) const;
};

/// Chance that a place of the pattern really holds a stud within its jitter (chosen: .9).
inline constexpr double kUnbroken = 0.9;

/// The likeliest pattern of the studs found (base-line centres with sd), weighed against every
/// other pattern and against none. `nominal` left out: the usual spacings are tried. None: nothing
/// found.
std::optional<StudPattern> pattern_of(const std::vector<Measured>& found,
                                      std::optional<double> nominal);

}  // namespace nook
