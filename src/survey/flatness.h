// How far the walls stray from flat, as the readings themselves tell it.
#pragma once

#include "survey/solution.h"

namespace nook {

/// Of 1, 2, 4, 8 mm the sd that makes the readings likeliest, given at most one slip among them,
/// and the whitening for it at the solution.
struct LikelyFlatness {
  double sd = 0;
  std::shared_ptr<const Whitening> whitening;
};
/// `solution` belongs to `model`. Requires: the model's flatness is not 0.
LikelyFlatness likeliest_flatness(const RoomModel& model, const Solution& solution);

}  // namespace nook
