// What a piece weighs, and how many hands lift it.
#pragma once

#include <optional>

#include "design/piece.h"

namespace nook::safe {

/// Kilograms of wood at room dryness for each of specific gravity, in a cubic meter. Specific
/// gravity is oven-dry weight over volume at 12 % moisture: 12 % more (USDA Wood Handbook, from
/// memory).
inline constexpr double kDensityOfGravity = 1120;

/// Weight as drawn, cutouts taken out, N; nothing where the stock states neither density nor
/// gravity.
std::optional<double> weight_of(const Stock& stock, const Piece& piece);

/// Whether a piece is longer than one person handles: 2.1 m. Chosen.
bool is_long(const Piece& piece);

/// How many lift a piece of that weight, N: one at most 51 lb (NIOSH lifting equation, 1994), and
/// two what is long.
int hands_for(double newtons, const Piece& piece);

}  // namespace nook::safe
