// What to measure for a design, in walking order: the list that text, JSON and paper are made from.
#pragma once

#include <string>
#include <vector>

#include "base/notation.h"
#include "design/design.h"
#include "fit/design_wants.h"
#include "room/survey.h"
#include "survey/plan.h"

namespace nook {

/// A room as far as it is known, what a design (if any) wants of it, and the readings that give it.
struct MeasuringJob {
  const Survey& survey;
  const Design* design = nullptr;
  MeasuringPlan plan;
  std::vector<StudsWanted> studs;
};

/// One thing to do or to read.
struct MeasuringStep {
  std::string what;
  double minutes = 0;
  bool needed = false;   // the design waits for it; else to be looked at and listed
  bool reading = false;  // of the plan: a number to write down
  bool twice = false;    // nothing else checks it: taken again
  double gain = 0;       // of a reading: share of what was open at first
  int numbers = 1;       // to write down
};
/// Steps that are taken in one go, and how.
struct MeasuringStop {
  std::string name, how;
  std::vector<MeasuringStep> steps;
};

/// Look and list, level line, floor, corners, walls, studs, obstacles, the way in. What the file
/// says already is left out, and stops where nothing is left to do.
std::vector<MeasuringStop> measuring_stops(const MeasuringJob& job, const Rounding& rounding);

/// All minutes of all stops.
double minutes_of(const std::vector<MeasuringStop>& stops);

}  // namespace nook
