// Holes to be bored into one piece on the bench, row by row.
#pragma once

#include <string>

#include "base/notation.h"
#include "shop/cut.h"

namespace nook {

/// "bore left 1, 2: 1/2" from the top edge; from the right end 3, 19": a line for each row.
std::string pilot_lines(const CutPiece& piece, Rounding rounding);

}  // namespace nook
