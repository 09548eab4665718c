// Readings that a person can take in a room, at marks that are easy to lay off.
#pragma once

#include "survey/outlook.h"

namespace nook {

/// An upright edge on a wall, base-line distance and heights in mm. From `low` up to `high` it is
/// also taken with a plumb line; where they are one, only with a level.
struct UprightSpot {
  int wall = 0;
  double along = 0, low = 0, high = 0;
};
/// A level edge on a wall: a string along it.
struct LevelRun {
  int wall = 0;
  double from = 0, to = 0, up = 0;  // base-line distances, mm
};
/// A place on the floor beside a wall.
struct FloorPlace {
  int wall = 0;
  double along = 0, out = 0;  // base-line distances, mm
};
/// Where a design meets a room.
struct TakingSpots {
  std::vector<UprightSpot> uprights;
  std::vector<LevelRun> runs;
  std::vector<FloorPlace> floor;
};

/// Diagonals, levels, straightedges, lengths between corners, heights of the floor, tapes between
/// marks, and diagonals already taken once more. Heights clear of the baseboards. What lies between
/// two corners is counted from the nearer one. Besides, what the spots ask for.
std::vector<Takable> takable_readings(View& view, const TakingSpots& spots = {});

}  // namespace nook
