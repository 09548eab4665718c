// Readings that a person can take in a room, at marks that are easy to lay off.
#pragma once

#include "survey/outlook.h"

namespace nook {

/// A place along a wall, base-line distance in mm.
struct WallSpot {
  int wall = 0;
  double along = 0;
};

/// Diagonals, levels, straightedges, lengths between corners, heights of the floor, tapes between
/// marks, and diagonals already taken once more. Heights clear of the baseboards. Levels also at
/// `spots`.
std::vector<Takable> takable_readings(View& view, const std::vector<WallSpot>& spots = {});

}  // namespace nook
