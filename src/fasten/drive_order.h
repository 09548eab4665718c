// The order in which a piece's screws are driven.
#pragma once

#include <vector>

#include "fasten/drill.h"

namespace nook {

/// Numbers the holes of one piece: the surest at the top first, then the top one furthest from it,
/// when the piece is level; then along the top, then the rest; holes to probe come last.
void number_drives(std::vector<Hole>& holes);

}  // namespace nook
