// What a piece weighs, and how many hands lift it.
#pragma once

#include <optional>
#include <string>

#include "design/piece.h"

namespace nook {

inline constexpr double kStandardGravity = 9.80665;       // N in a kilogram, exact by convention
inline constexpr double kKilogramsPerPound = 0.45359237;  // exact by definition (1959)

/// Kilograms of the piece as drawn, cutouts taken out; nothing where its stock states neither
/// density nor specific gravity.
std::optional<double> weight_kg(const Design& design, const Piece& piece);

/// `31 lb, one person`, `64 lb, two people`; `weight not known` where the stock does not say.
/// One person lifts at most 51 lb (NIOSH lifting equation, 1994) and a piece up to 2.1 m (chosen).
std::string lift_words(const Design& design, const Piece& piece, Unit unit);

}  // namespace nook
