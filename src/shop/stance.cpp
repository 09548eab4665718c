// Corners gathered, figures averaged.
#include "shop/stance.h"

#include <algorithm>
#include <cmath>

namespace nook {

Measured over_draws(const KnownRoom& known, const std::function<double(const RoomShape&)>& figure) {
  const double value = figure(known.room);
  double squares = 0;
  const size_t count = std::min(known.draws.size(), kFigureDraws);
  for (size_t k = 0; k < count; ++k) {
    const double off = figure(known.draws[k]) - value;
    squares += off * off;
  }
  return {value, count == 0 ? 0 : std::sqrt(squares / static_cast<double>(count))};
}

Stance stance_of(std::string name, std::vector<CarriedPiece> pieces) {
  Stance stance{std::move(name), {}, std::move(pieces)};
  for (const CarriedPiece& piece : stance.pieces) {
    const std::vector<Vec3> corners = corners_of(piece);
    stance.corners.insert(stance.corners.end(), corners.begin(), corners.end());
  }
  return stance;
}

}  // namespace nook
