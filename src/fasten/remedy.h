// Where no stud lies behind a piece: what the trade does instead, with its numbers.
#pragma once

#include "fasten/drill.h"
#include "fasten/hole_rows.h"

namespace nook {

/// Whether the studs found tell what lies behind the piece: some lie there, the even spacing is
/// known, or it lies between two that stand next to each other.
bool is_looked_behind(const Hanging& hanging, const WallStuds& studs);
/// What to look for where they do not.
Untold no_stud_known(const Hanging& hanging, const std::string& wall);

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
