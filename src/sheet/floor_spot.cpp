// The floor under the pieces, spot by spot.
#include "sheet/floor_spot.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sheet/drawing.h"

namespace nook {
namespace {

constexpr double kGrid = 50;         // mm. Chosen
constexpr double kBesideWall = 600;  // mm. Chosen
constexpr double kSame = 0.01;       // mm: heights closer than that are equal

// Along and out of the first wall that the design stands at.
PageBox under_pieces(const JobScene& scene) {
  PageBox box;
  for (std::size_t i = 0; i < scene.pieces.size(); ++i)
    for (Vec3 p : solid_of(scene.pieces[i], scene.frames[i]))
      box.take_in(scene.room.walls[0].wall_from_room({p.x, p.y}));
  return box;
}

FloorSpot highest(const JobScene& scene, int wall, const PageBox& within) {
  FloorSpot best{-1e300, wall, 0, 0};
  for (double a = std::max(within.low.x, 0.0); a <= within.high.x; a += kGrid)
    for (double o = std::max(within.low.y, 0.0); o <= within.high.y; o += kGrid) {
      const double z = scene.room.floor.z(scene.room.walls[wall].room_from_wall(a, o));
      if (z > best.z + kSame) best = {z, wall, a, o};
    }
  return best;
}

// The same spot counted along and out from the wall it is nearest to.
FloorSpot by_nearest_wall(const JobScene& scene, FloorSpot spot) {
  const Vec2 at = scene.room.walls[spot.wall].room_from_wall(spot.along, spot.out);
  for (std::size_t k = 0; k < scene.room.walls.size(); ++k) {
    const WallShape& wall = scene.room.walls[k];
    const Vec2 seen = wall.wall_from_room(at);
    if (seen.x > -kGrid && seen.x < wall.length + kGrid && seen.y < spot.out - kSame)
      spot = {spot.z, static_cast<int>(k), std::max(seen.x, 0.0), std::max(seen.y, 0.0)};
  }
  return spot;
}

}  // namespace

FloorSpot high_spot(const JobScene& scene) {
  if (!scene.pieces.empty()) return by_nearest_wall(scene, highest(scene, 0, under_pieces(scene)));
  FloorSpot best{-1e300, 0, 0, 0};
  for (std::size_t k = 0; k < scene.room.walls.size(); ++k) {
    const FloorSpot spot =
        highest(scene, static_cast<int>(k), {{0, 0}, {scene.room.walls[k].length, kBesideWall}});
    if (spot.z > best.z + kSame) best = spot;
  }
  return best;
}

std::string said(const FloorSpot& spot, const JobScene& scene) {
  // A spot of a 50 mm grid is not known to a mark: whole inches or centimeters say it.
  const bool inch = scene.rounding.unit == Unit::inch;
  const Rounding coarse{scene.rounding.unit, inch ? inches(1) : millimetres(10)};
  const std::string out = with_unit(millimetres(spot.out), coarse);
  return fmt::format("{} along the {} wall, {}", with_unit(millimetres(spot.along), coarse),
                     scene.room.walls[spot.wall].name,
                     out == with_unit({}, coarse) ? "close to it" : out + " out from it");
}

}  // namespace nook
