// Patches by the wall's own frame.
#include "safety/on_wall.h"

#include <algorithm>

#include "fasten/wall_frame.h"

namespace nook::safe {

Patch patch_of(const Scene& scene, int wall, const Body& body) {
  const WallShape& shape = scene.in.room.walls[wall];
  Patch patch{wall, {1e9, 1e9}, {-1e9, -1e9}};
  for (Vec2 p : body.region.outline)
    for (double w : {0.0, body.piece->thickness}) {
      const Vec3 q = body.frame.room_from_piece({p.x, p.y, w});
      const double a = shape.wall_from_room({q.x, q.y}).x;
      patch.low = {std::min(patch.low.x, a), std::min(patch.low.y, q.z)};
      patch.high = {std::max(patch.high.x, a), std::max(patch.high.y, q.z)};
    }
  return patch;
}

std::optional<Patch> patch_of(const Scene& scene, int wall, const Obstacle& obstacle) {
  const WallFrame frame(scene.in.room, wall);
  const double near = frame.base(obstacle.along[0].mm, kUsualHeight, obstacle.from_right);
  const auto low = frame.z(obstacle.height[0], near), high = frame.z(obstacle.height[1], near);
  if (!low || !high) return {};
  const double middle = (*low + *high) / 2;
  const double a = frame.base(obstacle.along[0].mm, middle, obstacle.from_right);
  const double b = frame.base(obstacle.along[1].mm, middle, obstacle.from_right);
  return Patch{
      wall, {std::min(a, b), std::min(*low, *high)}, {std::max(a, b), std::max(*low, *high)}};
}

bool share_along(const Patch& a, const Patch& b) {
  return a.low.x < b.high.x && b.low.x < a.high.x;
}

bool share_height(const Patch& a, const Patch& b) {
  return a.low.y < b.high.y && b.low.y < a.high.y;
}

int wall_into(const Scene& scene, const Fastening& fastening) {
  const std::string name = wall_named(fastening.to);
  const auto& walls = scene.in.survey.walls;
  for (std::size_t k = 0; k < walls.size(); ++k)
    if (!name.empty() && walls[k].name == name) return static_cast<int>(k);
  return -1;
}

}  // namespace nook::safe
