// Marks to copy onto a stick: along each wall and each piece, all from one start.
#pragma once

#include "fasten/drill.h"
#include "fasten/said.h"

namespace nook {

/// Marks nearer together than this, or told alike, are one mark (half of 1/16 in; chosen).
inline constexpr double kSameMark = 0.8;

/// From the plumb line where there is one, else from the corner; away from the corner positive.
std::optional<StoryPole> wall_pole(const WallDrill& wall, const Saying& say);
/// One for each piece and square end that holes count from.
std::vector<StoryPole> piece_poles(const std::vector<Hole>& holes, const Saying& say);

}  // namespace nook
