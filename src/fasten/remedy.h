// Where no stud lies behind a piece: what the trade does instead, with its numbers.
#pragma once

#include <string>

#include "fasten/hole_rows.h"

namespace nook {

/// Why no stud takes the piece's screws, and blocking, a longer piece or a cleat instead.
std::string no_stud_reason(const Hanging& hanging, const WallStuds& studs);

/// Base-line range of the piece on the wall, the lesser first.
Stretch extent_of(const Hanging& hanging);

}  // namespace nook
