// One piece of the cutting list in words, and how a stock is laid out.
#pragma once

#include <string>

#include "base/notation.h"
#include "shop/cut.h"

namespace nook {

/// "37 3/4 x 84"": width by height; a stick by its length.
std::string blank_words(const CutPiece& piece, Rounding rounding);

/// Everything to be done to one piece, a line each, 80 columns.
std::string piece_words(const CutPiece& piece, Rounding rounding);

/// What follows a notch's width (across) or height where the side it is measured from is left wild:
/// " from the finished line, 27 mm from the wild edge". Else empty.
std::string past_wild(const CutNotch& notch, bool across, Rounding rounding);

/// Boards or sheets with what comes off each, and the waste.
std::string layout_words(const StockCut& stock, Rounding rounding);

}  // namespace nook
