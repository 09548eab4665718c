// How far a baseboard with its shoe stands out of its wall.
#pragma once

#include "room/survey.h"

namespace nook {

/// Height of a base shoe; the file says only how far it stands out. Common practice, no source.
inline constexpr Length kShoeHeight = inches(0.75);

/// How far board and shoe stand out of the wall's face at `height` above the floor; 0 above the
/// board. A profile is straight between its points, and square where it has none.
Length stand_out(const Baseboard& board, Length height);

}  // namespace nook
