// How a stock is laid out, in words.
#pragma once

#include <string>

#include "base/notation.h"
#include "shop/cut.h"

namespace nook {

/// Boards or sheets with what comes off each, and the waste.
std::string layout_words(const StockCut& stock, Rounding rounding);

}  // namespace nook
