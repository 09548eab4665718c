// What one more tape would find: distances that the room foretells.
#pragma once

#include <string>
#include <tl/expected.hpp>

#include "base/measured.h"
#include "survey/solution.h"

namespace nook {

/// Exact marks from the real corner on both of its walls, at a height above the floor; mm.
struct DiagonalSpots {
  int corner = 0;
  double first = 0, second = 0, height = 0;
};

/// The straight distance between exact marks; the reason where nothing says.
tl::expected<Measured, std::string> expected_diagonal(const RoomModel& model,
                                                      const Solution& solution,
                                                      const DiagonalSpots& spots);
tl::expected<Measured, std::string> expected_span(const RoomModel& model, const Solution& solution,
                                                  const std::string& a, const std::string& b);

}  // namespace nook
