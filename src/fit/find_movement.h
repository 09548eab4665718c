// Solid wood that is held tight on both sides across its grain.
#pragma once

#include "fit/fit_answer.h"

namespace nook {

/// Pieces of solid wood whose contacts on both sides across the grain leave less open than the wood
/// swells by over a year: 1/8 in a foot of its width (common practice, no source). Pieces that move
/// less than 1/32 in are left out (chosen: less than a saw follows).
std::vector<MovementFit> find_movement(const Design& design, const FitAnswer& answer);

}  // namespace nook
