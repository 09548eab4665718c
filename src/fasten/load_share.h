// How a load divides among the screws that hold a piece: a stiff beam on equal springs.
#pragma once

#include <vector>

#include "base/vector.h"

namespace nook {

/// Force on one screw, newtons: down positive, and level (along +x).
struct ScrewLoad {
  double down = 0, level = 0;
};

/// Shares of `load` (down, at `x`) on screws at `at` (x level, y up; mm).
/// 1. They sum to the load and balance its moment.
/// 2. Screws on studs apart carry up and down only:
///    R = P (1/n + (x - X)(x_i - X) / sum (x_j - X)^2); a load past the last one levers and lifts
///    the other end.
/// 3. Screws in one stud resist the turning by their distance from their middle, in all directions.
/// 4. Empty where nothing resists the turning: one screw and a load beside it.
std::vector<ScrewLoad> shares(const std::vector<Vec2>& at, double load, double x);

}  // namespace nook
