// Openings in a plane as left by everything that crosses it, each by the largest sphere it passes.
#pragma once

#include <vector>

#include "safety/grid.h"

namespace nook::safe {

/// A place that a sphere can pass and cannot leave sideways.
struct LeftOpening {
  Vec2 at;                 // the middle of the largest circle in it
  double across = 0;       // its diameter, mm, good to 0.002 mm
  std::vector<Touch> rim;  // what the circle touches, nearest first
  bool ground = false;     // the floor bounds it from below
};

/// Every opening closed on all sides that lets a sphere of diameter `least` through and none of
/// `most`. Two places belong to one opening where the sphere of diameter `least` can roll between
/// them (to within kCell).
std::vector<LeftOpening> openings(const Air& air, const Grid& grid, double least, double most);

}  // namespace nook::safe
