// Each block as a prism on its side: the section in out and height, extruded along the wall.
#include "fit/obstacle_solid.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

constexpr double kLength = 300;  // mm along the wall; chosen

struct WallBox {
  double a_low = 1e300, a_high = -1e300, out_low = 1e300, z_low = 1e300, z_high = -1e300;
};
WallBox box_on_wall(const WallShape& wall, const CellSolid& cell, const Frame& frame) {
  WallBox box;
  for (Vec3 p : cell.corners) {
    const Vec3 q = frame.room_from_piece(p);
    const Vec2 at = wall.wall_from_room(plan(q));
    box.a_low = std::min(box.a_low, at.x);
    box.a_high = std::max(box.a_high, at.x);
    box.out_low = std::min(box.out_low, at.y);
    box.z_low = std::min(box.z_low, q.z);
    box.z_high = std::max(box.z_high, q.z);
  }
  return box;
}

// u = out, v = up, w = along: a section with a sloping front.
ObstacleSolid solid_of(const SiteView& view, int wall, int index, Stretch along) {
  const WallShape& shape = view.shape().walls[wall];
  const BlockHere& here = view.blocks(wall)[index];
  const Block& block = *here.block;
  const double middle = (along.from + along.to) / 2;
  const double low = view.z_of(block.height_from, wall, middle);
  const double high = view.z_of(block.height_to, wall, middle);
  const auto front = [&](double z) {
    return shape.out_at(middle, z) + block.out_to + block.slope * (z - low);
  };
  const double back = shape.out_at(middle, low) + block.out_from;
  const Polygon section{{back, low}, {front(low), low}, {front(high), high}, {back, high}};
  const Vec2 start = shape.room_from_wall(along.from, 0);
  const Vec3 w{shape.along.x, shape.along.y, 0};
  ObstacleSolid solid{block.name, index, solid_of(section, along.to - along.from, -1), {}};
  solid.frame = {{start.x, start.y, 0}, {shape.out.x, shape.out.y, 0}, {0, 0, 1}, w};
  return solid;
}

}  // namespace

std::vector<ObstacleSolid> obstacles_near(const SiteView& view, int wall, const CellSolid& cell,
                                          const Frame& frame, double reach) {
  std::vector<ObstacleSolid> found;
  const auto& blocks = view.blocks(wall);
  if (blocks.empty()) return found;
  const WallBox box = box_on_wall(view.shape().walls[wall], cell, frame);
  for (int k = 0; k < static_cast<int>(blocks.size()); ++k) {
    const Block& block = *blocks[k].block;
    const double front = block.out_to + std::max(0.0, block.slope) * 1000;
    if (box.out_low > front + reach + 100) continue;
    const double from = std::max(blocks[k].a_from, box.a_low - reach);
    const double to = std::min(blocks[k].a_to, box.a_high + reach);
    if (from >= to) continue;
    const double middle = (from + to) / 2;
    if (view.z_of(block.height_from, wall, middle) > box.z_high + reach ||
        view.z_of(block.height_to, wall, middle) < box.z_low - reach)
      continue;
    const int parts = std::max(1, static_cast<int>(std::ceil((to - from) / kLength)));
    for (int i = 0; i < parts; ++i)
      found.push_back(solid_of(
          view, wall, k, {from + (to - from) * i / parts, from + (to - from) * (i + 1) / parts}));
  }
  return found;
}

}  // namespace nook
