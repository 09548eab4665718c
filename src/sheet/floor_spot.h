// The high spot of the floor, and how to find it with a tape.
#pragma once

#include <string>

#include "sheet/scene.h"

namespace nook {

/// A spot of the floor: z over the room's zero, and its place counted along and out from a wall.
struct FloorSpot {
  double z = 0;
  int wall = 0;
  double along = 0, out = 0;
};

/// The highest of the adjusted floor under the design's pieces (without pieces: within 600 mm of
/// the walls), on a grid of 50 mm; of equal ones the first from the corner.
FloorSpot high_spot(const JobScene& scene);

/// `24" along the left wall, 4" out`.
std::string said(const FloorSpot& spot, const JobScene& scene);

}  // namespace nook
