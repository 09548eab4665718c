// Heights compared; what counts from the level line may be anywhere.
#include "adapt/obstacles.h"

#include <algorithm>

namespace nook {
namespace {

struct Heights {
  double low = 1e300, high = -1e300;
};

Heights heights_of(const Workbench& bench, int piece) {
  Heights found;
  const Piece& of = bench.answer.pieces[piece];
  for (const Vec2 p : of.drawn->outline)
    for (const double w : {0.0, of.thickness}) {
      const double z = bench.answer.frames[piece].room_from_piece({p.x, p.y, w}).z;
      found = {std::min(found.low, z), std::max(found.high, z)};
    }
  return found;
}

constexpr double kUneven = 25;  // mm that a floor may stray from z = 0 there. Chosen

bool reaches(const Obstacle& obstacle, const Heights& piece) {
  if (obstacle.height[0].from_line || obstacle.height[1].from_line) return true;
  return obstacle.height[0].value.mm < piece.high + kUneven &&
         obstacle.height[1].value.mm > piece.low - kUneven;
}

}  // namespace

bool meets_obstacle(const Workbench& bench, const ContactFit& contact) {
  const Heights piece = heights_of(bench, contact.piece);
  return std::any_of(bench.survey.walls.begin(), bench.survey.walls.end(), [&](const Wall& wall) {
    if (wall.name != wall_named(contact.how->meets)) return false;
    return (wall.baseboard && wall.baseboard->height.mm > piece.low - kUneven) ||
           std::any_of(wall.obstacles.begin(), wall.obstacles.end(),
                       [&](const Obstacle& o) { return reaches(o, piece); });
  });
}

}  // namespace nook
