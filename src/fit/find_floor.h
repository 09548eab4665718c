// How pieces stand: shims under them, and what the covering does under load.
#pragma once

#include "fit/fit_answer.h"
#include "fit/trials.h"

namespace nook {

/// One entry for each piece that stands, in the order of the pieces.
std::vector<FloorFit> find_floor(const Trials& trials);

/// How far a covering gives under a pressure.
struct SquashRange {
  double likely = 0, least = 0, most = 0;
};
/// From the stand-on tests: within a quarter of a tested pressure the test itself; else a curve
/// through the nearest test that ends at the covering's thickness, s = T p / (p + c) (chosen; no
/// published load-deflection table was found), bounded by zero and the thickness. Without a test
/// half the thickness, between nothing and all of it. `pressure` in N/mm2.
SquashRange squash_under(const Floor& floor, double pressure);
/// Where no load is known: the most that any test gave, between nothing and all of the thickness.
SquashRange squash_untold(const Floor& floor);

}  // namespace nook
