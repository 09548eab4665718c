// Corners gathered, figures averaged.
#include "shop/stance.h"

namespace nook {

Measured over_draws(const KnownRoom& known, const std::function<double(const RoomShape&)>& figure) {
  const double value = figure(known.room);
  double squares = 0;
  for (const RoomShape& draw : known.draws) {
    const double off = figure(draw) - value;
    squares += off * off;
  }
  return {value, known.draws.empty() ? 0 : std::sqrt(squares / known.draws.size())};
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
