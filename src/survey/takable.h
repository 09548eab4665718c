// Readings that a person can take in a room, at marks that are easy to lay off.
#pragma once

#include "survey/outlook.h"

namespace nook {

/// Diagonals, levels, straightedges, lengths between corners, heights of the floor, tapes between
/// marks, and diagonals already taken once more. Heights clear of the baseboards.
std::vector<Takable> takable_readings(View& view);

}  // namespace nook
