// What a piece weighs, and how many hands lift it.
#pragma once

#include <string>

#include "design/piece.h"

namespace nook {

/// `31 lb, one person`, `64 lb, two people`; `weight not known` where the stock does not say.
/// As the cautions count hands.
std::string lift_words(const Design& design, const Piece& piece, Unit unit);

}  // namespace nook
