// Quantities of the room that something hangs on, for the value of further readings.
#pragma once

#include <vector>

#include "base/vector.h"

namespace nook {

/// A spot on a surface of the room, mm.
struct SurfaceSpot {
  enum class On { wall, floor, ceiling };
  On on = On::wall;
  int wall = 0;
  double along = 0, z = 0;  // base-line distance and height, on a wall
  Vec2 plan;                // room frame, on floor or ceiling
};

/// A linear quantity: sum of weight x how far the surface moves at a spot, in the room frame, into
/// the room (walls) or up (floor, ceiling). `tolerance` is the sd at which it is known well enough.
struct Undecided {
  struct Term {
    SurfaceSpot spot;
    double weight = 1;
  };
  std::vector<Term> terms;
  double tolerance = 1;
};

}  // namespace nook
