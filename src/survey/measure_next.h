// Which readings to take next: those that settle most of what is undecided.
#pragma once

#include "survey/outlook.h"
#include "survey/undecided.h"

namespace nook {

/// A quantity of the room as a functional, over its tolerance.
Functional functional(View& view, const Undecided& undecided);

/// What matters in a room that no design is known for: how each wall stands against its neighbor
/// within reach of the corner, the floor under the level line, distances between marks.
std::vector<Functional> usual_wants(View& view);

/// The best `count` readings one after the other, each given those before; gains are shares of what
/// was open at first. Readings that remove less than 1 % are not named.
std::vector<NextReading> measure_next(const RoomModel& model, const Solution& solution,
                                      const std::vector<Undecided>& undecided, int count);

}  // namespace nook
