// The way in, in the words of the trade.
#pragma once

#include <string>
#include <vector>

#include "sheet/answer.h"
#include "shop/carry.h"

namespace nook {

/// How a piece is held at one place: "on edge", "tipped to 94"", "stood up out in the room, ...".
std::string how_held(const Pass& pass, Rounding rounding);

/// What does not pass or cannot be told, each with what to do; then what passes. Worst first.
std::vector<Finding> carry_findings(const CarryAnswer& carry, const Style& style);

/// The page that `nookfit carry` prints. 80 columns.
std::string carry_text(const CarryAnswer& carry, const Style& style);

}  // namespace nook
