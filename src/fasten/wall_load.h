// What the screws of a piece on a wall carry, and whether they may.
#pragma once

#include "fasten/strength.h"
#include "fasten/wall_screws.h"

namespace nook {

/// Strength of one piece on one wall; writes each hole's load into `screws`. Loads past the last
/// stud lever; wallboard and shim are the gap.
Strength strength_on_wall(const Hanging& hanging, const WallContext& context, WallScrews& screws);

}  // namespace nook
