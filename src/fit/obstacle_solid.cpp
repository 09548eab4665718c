// Each length as a prism on its side: the section in out and height, extruded along the surface.
#include "fit/obstacle_solid.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

constexpr double kLength = 60;  // mm along the wall; chosen, see the class
constexpr double kNear = 80;    // mm; blocks further from every piece, and from those that are to
                                // keep clear by more, are left out. Chosen

// A block without end is looked at this far beyond the wall's base line.
Stretch bounded(const BlockHere& here, const WallShape& wall) {
  constexpr double kBeyond = 300;
  return {std::max(here.a_from, -kBeyond), std::min(here.a_to, wall.length + kBeyond)};
}

// The stretch of a wall that a piece is near to; empty (from > to) if it is far out of it.
Stretch near_stretch(const WallShape& wall, const Body& body, const Frame& frame, double reach,
                     double near) {
  Stretch along{1e300, -1e300};
  double out = 1e300;
  for (Vec2 p : body.region.outline)
    for (double w : {0.0, body.thickness}) {
      const Vec2 at = wall.wall_from_room(plan(frame.room_from_piece({p.x, p.y, w})));
      along = {std::min(along.from, at.x - near), std::max(along.to, at.x + near)};
      out = std::min(out, at.y);
    }
  return out > reach + near ? Stretch{1, 0} : along;
}

}  // namespace

Obstacles::Obstacles(const Scene& scene, Site& site, const std::vector<Frame>& frames) {
  const RoomShape& room = site.fields().room(0);
  for (int w = 0; w < static_cast<int>(room.walls.size()); ++w)
    for (int b = 0; b < static_cast<int>(site.blocks(w).size()); ++b) {
      std::vector<Stretch> near;
      for (std::size_t p = 0; p < frames.size(); ++p)
        near.push_back(near_stretch(room.walls[w], scene.bodies[p], frames[p],
                                    site.blocks(w)[b].out_to + kNear,
                                    std::max(kNear, wanted_clear(scene, static_cast<int>(p)))));
      add_block(site, near, w, b);
    }
}

void Obstacles::add_block(Site& site, const std::vector<Stretch>& near, int wall, int block) {
  const SiteView& view = site.adjusted();
  const BlockHere& here = view.blocks(wall)[block];
  const Stretch whole = bounded(here, view.shape().walls[wall]);
  const double length = whole.to - whole.from;
  const auto ends = [&](double share) {
    const double a = whole.from + share * length;
    const auto spot = [&](Block::Bound height) {
      return site.fields().add({Surface::Kind::wall, wall}, {a, view.z_of(height, wall, a)}, true);
    };
    return Length::Ends{spot(here.block->height_from), spot(here.block->height_to)};
  };
  const int parts = std::max(1, static_cast<int>(std::ceil(length / kLength)));
  bool goes_on = false;  // from the length before, whose end is this one's start
  for (int i = 0; i < parts; ++i) {
    const double from = static_cast<double>(i) / parts, to = (i + 1.0) / parts;
    const auto meets = [&](Stretch s) {
      return s.from < whole.from + to * length && s.to > whole.from + from * length;
    };
    const bool wanted = std::any_of(near.begin(), near.end(), meets);
    if (wanted) {
      const Length::Ends start = goes_on ? lengths_.back().at_to : ends(from);
      lengths_.push_back({wall, block, from, to, start, ends(to)});
    }
    goes_on = wanted;
  }
}

// u = out of the surface, v = up, w = along it: a section with a sloping front.
ObstacleSolid Obstacles::in(const Site& site, const SiteView& view, std::size_t index) const {
  const Length& length = lengths_[index];
  const WallShape& wall = view.shape().walls[length.wall];
  const BlockHere& here = view.blocks(length.wall)[length.block];
  const Block& block = *here.block;
  const Stretch whole = bounded(here, wall);
  const auto along = [&](double share) { return whole.from + share * (whole.to - whole.from); };
  const double middle = along((length.from + length.to) / 2);
  const double low = view.z_of(block.height_from, length.wall, middle);
  const double high = view.z_of(block.height_to, length.wall, middle);
  const auto surface = [&](double share, int spot, double z) {
    const double a = along(share);
    return wall.room_from_wall(
        a, wall.lean * z + site.fields().value(spot, view.room()) + wall.mud_at(a, z));
  };
  const Vec2 start = surface(length.from, length.at_from.low, low);
  const Vec2 end = surface(length.to, length.at_to.low, low);
  const Vec2 top = 0.5 * (surface(length.from, length.at_from.high, high) +
                          surface(length.to, length.at_to.high, high));
  const Vec2 chord = end - start;
  const Vec2 w = (1 / norm(chord)) * chord;
  // The section leans as the surface does from the block's bottom to its top.
  const double lean = dot(top - 0.5 * (start + end), wall.out);
  const double rise = block.slope * (high - low);
  const Vec2 section[] = {{block.out_from, low},
                          {block.out_to, low},
                          {block.out_to + rise + lean, high},
                          {block.out_from + lean, high}};
  const Vec2 out = dot(left_of(w), wall.out) > 0 ? left_of(w) : -left_of(w);
  ObstacleSolid here_now{{}, {{start.x, start.y, 0}, {out.x, out.y, 0}, {0, 0, 1}, {w.x, w.y, 0}}};
  for (std::size_t i = 0; i < 4; ++i) {
    here_now.corners[i] = {section[i].x, section[i].y, 0};
    here_now.corners[4 + i] = {section[i].x, section[i].y, norm(chord)};
  }
  return here_now;
}

const std::string& Obstacles::name(const Site& site, std::size_t index) const {
  return site.blocks(lengths_[index].wall)[lengths_[index].block].name;
}

CellSolid ObstacleSolid::cell() const {
  Polygon section;
  for (std::size_t i = 0; i < corners.size() / 2; ++i)
    section.push_back({corners[i].x, corners[i].y});
  CellSolid cell = solid_of(section, corners.back().z, -1);
  cell.goes_on = true;
  return cell;
}

}  // namespace nook
