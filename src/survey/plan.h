// The measuring sheet before anything is measured: the fewest readings that bring what a design
// hangs on within its tolerance.
#pragma once

#include <vector>

#include "room/survey.h"
#include "survey/report.h"
#include "survey/undecided.h"

namespace nook {

struct PlannedReading {
  NextReading reading;  // gain: of what was open at first
  double minutes = 0;
  bool twice = false;  // no other checks it: take it twice
};

/// In walking order: heights of the floor from the level line, corners, then each wall from its
/// corner on. `enough`: every quantity comes within its tolerance.
struct MeasuringPlan {
  std::vector<PlannedReading> readings;
  double minutes = 0;
  bool enough = false;
};

/// Chosen one after the other, most gain a minute first, until all is within tolerance, 15 readings
/// or 20 minutes (more is not taken: chosen). Readings already in the survey count. Walls need no
/// more than their names. Levels are also thought of at the spots that are `wanted`.
MeasuringPlan measuring_plan(const Survey& survey, int origin_corner,
                             const std::vector<Undecided>& wanted);

}  // namespace nook
