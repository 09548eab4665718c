// First values of the unknowns, good enough for the adjustment to find the rest of the way.
#pragma once

#include "room/survey.h"

namespace nook {

/// The mean of readings that are not struck, or `otherwise`.
double mean_or(const Readings& readings, double otherwise);

/// The angle of a corner from its diagonals, angle finders or squares; else 90 degrees. Radians.
double first_angle(const Survey& survey, int corner);
/// The length of a wall from its readings; else a usual length that holds all that was read on it.
double first_length(const Survey& survey, int wall);
/// The height of the level line over the floor; else 1 m.
double first_line(const Survey& survey);
/// The height of the ceiling over the floor.
double first_ceiling(const Survey& survey);
/// Whether anything was read from the level line or to it.
bool uses_level_line(const Survey& survey);

}  // namespace nook
