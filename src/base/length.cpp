// Sine and cosine that keep a square design square.
#include "base/length.h"

#include <algorithm>
#include <cmath>

namespace nook {

Direction direction(Angle angle) {
  const double quarters = angle.rad / (std::numbers::pi / 2);
  const double nearest = std::round(quarters);
  if (std::abs(quarters - nearest) > 1e-15 * std::max(1.0, std::abs(quarters)))
    return {std::cos(angle.rad), std::sin(angle.rad)};
  static constexpr Direction kQuarter[] = {{1, 0}, {0, 1}, {-1, 0}, {0, -1}};
  return kQuarter[((static_cast<long>(std::fmod(nearest, 4)) % 4) + 4) % 4];
}

}  // namespace nook
