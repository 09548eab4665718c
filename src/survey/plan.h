// The measuring sheet before anything is measured: the fewest readings that bring what a design
// hangs on within its tolerance.
#pragma once

#include <vector>

#include "room/survey.h"
#include "survey/missing.h"
#include "survey/report.h"
#include "survey/undecided.h"

namespace nook {

/// A place on the floor whose height under the level line matters, mm from the wall's corner and
/// out of it; known well enough at the sd `tolerance`.
struct FloorWanted {
  int wall = 0;
  double along = 0, out = 0, tolerance = 1;
};
/// What a design hangs on.
struct PlanWanted {
  std::vector<Undecided> surfaces;
  std::vector<FloorWanted> floor;
  std::vector<double> reach;  // how far along each wall, mm: where its length is not known no mark
                              // is farther
  bool whole = false;         // nothing of the room may be missing either (survey/missing.h)
  HeightsWanted heights;      // what may not be missing of its heights
};

struct PlannedReading {
  NextReading reading;  // gain: of what was open at first
  double minutes = 0;   // taken twice where nothing else checks it
  bool twice = false;   // no other checks it: take it twice
  int numbers = 1;      // that are read in one go
};

/// In walking order: heights of the floor from the level line, corners, then each wall from its
/// corner on. `enough`: every quantity comes within its tolerance.
struct MeasuringPlan {
  std::vector<PlannedReading> readings;
  std::vector<PlannedReading> ceiling;  // up to it, whatever else is taken
  double minutes = 0;                   // of all of them
  bool enough = false;
};

/// Chosen one after the other, most relief a minute first, until all is within tolerance or 15
/// readings or 20 minutes are full (more is not taken: chosen); then those are left out that the
/// others make needless. A run along one line counts as one. Readings already in the survey count.
/// Walls need no more than their names.
/// Levels, plumb lines and strings are also thought of where `wanted` lies. With nothing wanted:
/// what matters in any room.
MeasuringPlan measuring_plan(const Survey& survey, int origin_corner, const PlanWanted& wanted);

}  // namespace nook
