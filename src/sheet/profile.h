// How a wall strays from plumb and flat, drawn large, with its band.
#pragma once

#include <string>
#include <vector>

#include "base/measured.h"
#include "sheet/draft.h"
#include "sheet/scene.h"

namespace nook {

/// The wall at one spot: at a height (upright) or base-line distance (level), how far it stands out
/// of the straight line through its start, mm.
struct Stray {
  double at = 0;
  Measured out;
};

/// Up the wall at base-line distance a, against a plumb line through its foot.
std::vector<Stray> stray_up(const JobScene& scene, int wall, double a);
/// Along the wall at height z, against the straight line between its two ends.
std::vector<Stray> stray_along(const JobScene& scene, int wall, double z);

/// `leans in 3/8" in 94"` or `plumb`.
std::string lean_words(const std::vector<Stray>& up, const Rounding& rounding);
/// `proud 3/16" at 40", hollow 1/8" at 92"` or `flat`; spots counted from the first.
std::string hump_words(const std::vector<Stray>& along, const Rounding& rounding);

/// Up the wall at three spots and along it at one height; what is out of true is drawn large by the
/// printed factor. Heavy: as found; shaded: give or take, 95 times in 100; dash-dotted: true.
Drawing profile(const JobScene& scene, int wall, const Canvas& canvas);

}  // namespace nook
