// Whether an outline is alike on both sides of an upright center line, and which edge is across
// from which.
#pragma once

#include <optional>

#include "design/design.h"

namespace nook {

/// Where ring `a` mirrored about the line u = twice_centre / 2 is ring `b`, to 0.01 mm (chosen):
/// point k of `a` is across from point (result - k) of `b`, counted around. Nothing where it is
/// not.
std::optional<int> across(const Polygon& a, const Polygon& b, double twice_centre);

/// Whether a part's outline and all its cutouts are alike on both sides of its center line.
bool alike_on_both_sides(const Part& part);

/// The run of edges across from a run of a part that is alike on both sides. Requires: it is.
EdgeRun run_across(const Polygon& outline, const EdgeRun& run);

}  // namespace nook
