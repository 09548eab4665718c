// Each length as a prism on its side: the section in out and height, extruded along the wall.
#include "fit/obstacle_solid.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

constexpr double kLength = 300;  // mm along the wall; chosen

// A block without end is looked at this far beyond the wall's base line.
Stretch bounded(const BlockHere& here, const WallShape& wall) {
  constexpr double kBeyond = 300;
  return {std::max(here.a_from, -kBeyond), std::min(here.a_to, wall.length + kBeyond)};
}

}  // namespace

Obstacles::Obstacles(Site& site) {
  const SiteView& view = site.adjusted();
  for (int w = 0; w < static_cast<int>(view.shape().walls.size()); ++w)
    for (int b = 0; b < static_cast<int>(view.blocks(w).size()); ++b) {
      const BlockHere& here = view.blocks(w)[b];
      const Stretch along = bounded(here, view.shape().walls[w]);
      const int parts = static_cast<int>(std::ceil((along.to - along.from) / kLength));
      for (int i = 0; i < parts; ++i) {
        const double from = static_cast<double>(i) / parts, to = (i + 1.0) / parts;
        const double a = along.from + (from + to) / 2 * (along.to - along.from);
        const double z =
            (view.z_of(here.block->height_from, w, a) + view.z_of(here.block->height_to, w, a)) / 2;
        lengths_.push_back(
            {w, b, from, to, site.fields().add({Surface::Kind::wall, w}, {a, z}, true)});
      }
    }
}

// u = out, v = up, w = along: a section with a sloping front.
ObstacleSolid Obstacles::solid(const Site& site, const SiteView& view, const Length& length) const {
  const WallShape& wall = view.shape().walls[length.wall];
  const BlockHere& here = view.blocks(length.wall)[length.block];
  const Block& block = *here.block;
  const Stretch whole = bounded(here, wall);
  const double from = whole.from + length.from * (whole.to - whole.from);
  const double to = whole.from + length.to * (whole.to - whole.from), middle = (from + to) / 2;
  const double low = view.z_of(block.height_from, length.wall, middle);
  const double high = view.z_of(block.height_to, length.wall, middle);
  const double field = site.fields().value(length.spot, view.room());
  const auto front = [&](double z) {
    return wall.lean * z + field + SiteView::buildup(wall, middle) + block.out_to +
           block.slope * (z - low);
  };
  const double back = front(low) - block.out_to + block.out_from;
  const Vec2 start = wall.room_from_wall(from, 0);
  return {
      block.name,
      solid_of({{back, low}, {front(low), low}, {front(high), high}, {back, high}}, to - from, -1),
      {{start.x, start.y, 0},
       {wall.out.x, wall.out.y, 0},
       {0, 0, 1},
       {wall.along.x, wall.along.y, 0}}};
}

std::vector<ObstacleSolid> Obstacles::in(const Site& site, const SiteView& view) const {
  std::vector<ObstacleSolid> all;
  for (const Length& length : lengths_) all.push_back(solid(site, view, length));
  return all;
}

}  // namespace nook
