// What is odd about the studs of a wall, in words, and stud edges that cannot both be right.
#pragma once

#include <string>
#include <vector>

#include "fasten/drill.h"
#include "fasten/said.h"
#include "fasten/wall_context.h"

namespace nook {

/// Doubled, leaning, off the spacing; boxes that no stud carries.
std::vector<std::string> stud_notes(const WallContext& context, const Survey& survey, int wall,
                                    const Saying& say);

/// The probe by nail that would settle most of what the holes leave open, best first.
std::vector<NextReading> probes_for(const std::vector<WallDrill>& walls, const Saying& say);

}  // namespace nook
