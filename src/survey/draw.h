// Rooms drawn from what the readings leave open.
#pragma once

#include <cstdint>
#include <vector>

#include "survey/solution.h"

namespace nook {

/// The rooms of `count` states from the posterior around the solution; what no reading determines
/// is left as it is. In fours: a draw, that of the mirror image's room mirrored back, and both
/// turned about the solution. So a room and its mirror image have mirrored draws, in another order.
std::vector<RoomShape> draw_rooms(const RoomModel& model, const Solution& solution, int count,
                                  std::uint64_t seed);

}  // namespace nook
