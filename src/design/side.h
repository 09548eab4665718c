// The four sides of an outline as a person calls them.
#pragma once

#include "design/design.h"

namespace nook {

/// "left", "right", "bottom", "top".
const char* name_of(EdgeSide side);

/// The side across the piece.
EdgeSide opposite(EdgeSide side);

/// Whether it is the left or the right one.
bool upright(EdgeSide side);

}  // namespace nook
