// Whether what lies on a floor gives under a foot.
#pragma once

#include "room/survey.h"

namespace nook {

/// True where something was stood on it and sank, or where its kind says carpet, rug, felt, foam,
/// mat or cushion. Boards, tiles and stone do not give.
bool gives(const Floor& floor);

}  // namespace nook
