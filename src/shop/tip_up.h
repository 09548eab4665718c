// Tipping a tall piece up under the ceiling, beside what already stands there.
#pragma once

#include <optional>

#include "shop/carry.h"
#include "shop/stance.h"

namespace nook {

/// Nothing shorter than this, tipped, is asked about: mm, lower than any room one stands up in.
/// Chosen.
inline constexpr double kNeverTooTall = 1800;

/// How it is raised to its place; nothing for what is not tall. `standing` is up already.
/// Without a ceiling there is no spare room and the verdict is cannot tell.
std::optional<Pass> tip_up(const Stance& stance, const std::vector<Stance>& standing,
                           const KnownRoom& known, double sure);

}  // namespace nook
