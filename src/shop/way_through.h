// A box through one doorway or round one turn: the holds to try, and the one to take.
#pragma once

#include <vector>

#include "shop/box.h"
#include "shop/carry.h"

namespace nook {

/// What is known of the way in, and how sure a verdict has to be.
struct WayIn {
  const Survey& survey;
  double sure = 0.95;
};

/// The best hold of the best of `boxes` (any one is enough: each is round the same thing).
Pass through_doorway(const std::vector<Box>& boxes, const Doorway& door, const WayIn& way);
Pass round_turn(const std::vector<Box>& boxes, const HallTurn& turn, const WayIn& way);

}  // namespace nook
