// One piece of the cutting list in words, and how a stock is laid out.
#pragma once

#include <string>
#include <vector>

#include "base/notation.h"
#include "shop/cut.h"

namespace nook {

/// What the pieces cut alike are called: "rung" where all copies of it are, else "rung 1, 2 and 4".
std::string called(const CutPiece& piece);

/// "37 3/4 x 84"": width by height; a stick by its length.
std::string blank_words(const CutPiece& piece, Rounding rounding);

/// Everything to be done to one piece, a line each, 80 columns.
std::string piece_words(const CutPiece& piece, Rounding rounding);

/// How long the edges between slanted ones are: "72" along the bottom, 71 1/2" along the top".
std::vector<std::string> sides_words(const CutPiece& piece, Rounding rounding);

/// "cut the left end slanted: 1/2" in at the top, 11.3 degrees off square".
std::string slant_words(const CutPiece& piece, const CutSlant& slant, Rounding rounding);

/// The corners that a diagonal of the blank joins, from its lower left one: "(0, 0) to (20, 24)".
std::string diagonal_words(const CutPiece& piece, size_t which, Rounding rounding);

/// What follows a notch's width (across) or height where the side it is measured from is left wild:
/// " from the finished line, 27 mm from the wild edge". Else empty.
std::string past_wild(const CutNotch& notch, bool across, Rounding rounding);

}  // namespace nook
