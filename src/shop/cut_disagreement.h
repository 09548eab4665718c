// Readings of one piece that cannot all be right.
#pragma once

#include <optional>

#include "shop/cut_solution.h"

namespace nook {

/// The reading without which the others agree best, each left out in its turn. Where they do not
/// even then, those that no saw strays to are left out together. Nothing where all agree.
std::optional<CutDisagreement> disagreement(const std::vector<Taped>& readings,
                                            const Polygon& outline, const Solved& all);

}  // namespace nook
