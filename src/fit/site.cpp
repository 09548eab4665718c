// Blocks and floor lines brought into each room, the corners solved from fields at fixed spots.
#include "fit/site.h"

#include <algorithm>
#include <cmath>

#include "design/design.h"

namespace nook {
namespace {

// The floor's field bends little over this. mm, chosen: 0.01 mm of a field of sd 2 and reach 1 m.
constexpr double kFloorStep = 200;
// Blocks end where a tape from the corner says at this height, mm; lean over a board's height moves
// that by less than the tape can tell. Chosen.
constexpr double kCornerHeight = 100;

}  // namespace

double SiteView::floor_at_wall(int wall, double a) const {
  const std::vector<double>& z = floors_[wall];
  const double last = static_cast<double>(z.size()) - 1;
  const double step = std::clamp(a / kFloorStep, 0.0, last);
  const std::size_t i = static_cast<std::size_t>(std::min(std::floor(step), last - 1));
  const double t = a / kFloorStep - static_cast<double>(i);  // straight on beyond both ends
  return z[i] + t * (z[i + 1] - z[i]);
}

Site::Site(const Survey& survey, const RoomShape& room, const std::vector<RoomShape>& draws)
    : fields_(room, draws) {
  for (int w = 0; w < static_cast<int>(room.walls.size()); ++w) {
    names_.push_back(room.walls[w].name);
    blocks_.push_back(blocks_of(survey.walls[w]));
    const bool free = w == 0 || w + 1 == static_cast<int>(room.walls.size());
    ends_.push_back(free && survey.walls[w].longest());
    add_spots(w);
  }
  for (int k = 0; k + 1 < static_cast<int>(room.walls.size()); ++k)
    corners_.push_back(add_corner(k, kCornerHeight));
  adjusted_ = view(0);
}

void Site::add_spots(int wall) {
  const WallShape& shape = fields_.room(0).walls[wall];
  std::vector<int> spots;
  const double end = std::max(shape.length, 0.0);  // a gross slip can turn a wall round
  for (double a = 0; a < end + 2 * kFloorStep; a += kFloorStep)
    spots.push_back(fields_.add({Surface::Kind::floor, 0}, shape.room_from_wall(a, 0), true));
  floor_spots_.push_back(std::move(spots));
}

int Site::wall_named(const std::string& meets) const {
  const std::string name = nook::wall_named(meets);
  const auto it = std::find(names_.begin(), names_.end(), name);
  return name.empty() || it == names_.end() ? -1 : static_cast<int>(it - names_.begin());
}

Site::CornerSpots Site::add_corner(int corner, double z) {
  const auto spot = [&](int w) {
    const double a = fields_.room(0).corner_along(corner, w, z);
    return fields_.add({Surface::Kind::wall, w}, {a, z}, true);
  };
  const int left = spot(corner), right = spot(corner + 1);
  return {corner, left, right, z};
}

Site::CornerSpots Site::corner_of(int wall, int first_wall, double z) {
  if (corners_.empty()) return {};
  const int last = static_cast<int>(corners_.size()) - 1;
  const int corner = wall > first_wall + 1 ? wall - 1 : wall < first_wall ? wall : first_wall;
  return add_corner(std::clamp(corner, 0, last), z);
}

Vec2 Site::corner_point(const CornerSpots& at, int room) const {
  const RoomShape& shape = fields_.room(room);
  const WallShape &left = shape.walls[at.corner], &right = shape.walls[at.corner + 1];
  const bool left_counts_here = at.corner == 0;  // wall 0 counts from it, others from before
  const double bump_left = left_counts_here ? left.buildup_proud : left.far_buildup_proud;
  const double o1 = left.lean * at.z + fields_.value(at.left, room) + bump_left;
  const double o2 = right.lean * at.z + fields_.value(at.right, room) + right.buildup_proud;
  const double r1 = o1 + dot(left.start, left.out), r2 = o2 + dot(right.start, right.out);
  const double det = cross(left.out, right.out);
  return {(r1 * right.out.y - r2 * left.out.y) / det, (r2 * left.out.x - r1 * right.out.x) / det};
}

Vec2 Site::corner_offset(const CornerSpots& at, int room) const {
  if (at.corner < 0) return {};
  const WallShape& right = fields_.room(room).walls[at.corner + 1];
  return corner_point(at, room) - right.start;
}

double Site::corner_along(int corner, int wall, int room) const {
  return fields_.room(room).walls[wall].wall_from_room(corner_point(corners_[corner], room)).x;
}

double Site::base_along(const Block& block, int wall, double reading, int room) const {
  if (!std::isfinite(reading) || corners_.empty()) return reading;
  if (wall == 0) return corner_along(0, 0, room) + reading;
  if (block.from_right) return corner_along(wall, wall, room) - reading;
  return corner_along(wall - 1, wall, room) + reading;
}

BlockHere Site::here(const Block& block, int wall, int room) const {
  constexpr double kEndless = 1e9;
  double a = base_along(block, wall, block.along_from, room);
  double b = base_along(block, wall, block.along_to, room);
  if (!std::isfinite(b)) {
    const double end = ends(wall) ? fields_.room(room).walls[wall].length : kEndless;
    b = block.from_right ? -kEndless : end;
  }
  // A board that starts at the corner fills it: the other wall bounds it there.
  if (block.board && block.along_from == 0) a = block.from_right ? kEndless : -kEndless;
  return {&block, std::min(a, b), std::max(a, b)};
}

SiteView Site::view(int room) const {
  SiteView view;
  view.shape_ = &fields_.room(room);
  view.room_ = room;
  view.quick_ = room > 0;
  const LevelSurface& floor = view.shape_->floor;
  for (int w = 0; w < static_cast<int>(blocks_.size()); ++w) {
    view.blocks_.emplace_back();
    for (const Block& block : blocks_[w]) view.blocks_.back().push_back(here(block, w, room));
    view.floors_.emplace_back();
    for (int spot : floor_spots_[w])
      view.floors_.back().push_back(floor.offset + dot(floor.slope, fields_.at(spot)) +
                                    fields_.value(spot, room));
  }
  return view;
}

}  // namespace nook
