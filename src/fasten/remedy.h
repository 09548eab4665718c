// Where no stud lies behind a piece: what the trade does instead, with its numbers.
#pragma once

#include "fasten/drill.h"
#include "fasten/hole_rows.h"

namespace nook {

/// Why no stud takes the piece's screws, and blocking, a longer piece or a cleat instead.
Unreachable no_stud_reason(const Hanging& hanging, const WallStuds& studs);

/// How much longer the piece must be at one end to hold a screw in the stud clear of its end; 0 or
/// less where it does.
double longer_by(const Hanging& hanging, const StudLine& stud);

/// How far from its ends the piece takes a screw, mm.
double end_of(const Hanging& hanging);

/// Base-line range of the piece on the wall, the lesser first.
Stretch extent_of(const Hanging& hanging);

}  // namespace nook
