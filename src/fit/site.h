// The room to fit into: every surface and block, in the adjusted room and in every draw.
#pragma once

#include <string>
#include <vector>

#include "fit/block.h"
#include "fit/surface_field.h"
#include "room/shape.h"

namespace nook {

/// A block's bounds in one concrete room: base-line distances; heights above the floor at the spot,
/// or room z where they count from the level line.
struct BlockHere {
  const Block* block = nullptr;
  double a_from = 0, a_to = 0;
};

/// Site has one of these for each room: cheap look-ups instead of sums of sines.
class SiteView {
 public:
  const RoomShape& shape() const { return *shape_; }
  int room() const { return room_; }
  /// Quick: only coarse spots are asked, and of parts only faces met before. True in the draws.
  bool quick() const { return quick_; }
  SiteView made_quick() const {
    SiteView view = *this;
    view.quick_ = true;
    return view;
  }
  const std::vector<BlockHere>& blocks(int wall) const { return blocks_[wall]; }
  /// Room z of the floor below base-line distance `a` of a wall, at its face.
  double floor_at_wall(int wall, double a) const;
  /// Room z of a height of a block there.
  double z_of(Block::Bound height, int wall, double a) const {
    return z_above(height, height.from_line ? 0 : floor_at_wall(wall, a));
  }
  /// The same where the floor there is known.
  double z_above(Block::Bound height, double floor) const {
    return (height.from_line ? shape_->line_z.value_or(0) : floor) + height.at;
  }

 private:
  friend class Site;
  const RoomShape* shape_ = nullptr;
  int room_ = 0;
  bool quick_ = false;
  std::vector<std::vector<BlockHere>> blocks_;  // by wall
  std::vector<std::vector<double>> floors_;     // by wall, at steps along it
};

class Site {
 public:
  Site(const Survey& survey, const RoomShape& room, const std::vector<RoomShape>& draws);

  SurfaceField& fields() { return fields_; }
  const SurfaceField& fields() const { return fields_; }
  int rooms() const { return fields_.rooms(); }
  const std::vector<Block>& blocks(int wall) const { return blocks_[wall]; }
  /// For room 0 at once, for draws after `fields().fill_draws()`.
  SiteView view(int room) const;
  const SiteView& adjusted() const { return adjusted_; }
  /// The index of the wall a name like "left wall" means, or -1.
  int wall_named(const std::string& meets) const;

  /// Whether it is known where a wall ends without a corner: at its length then.
  bool ends(int wall) const { return ends_[wall]; }

  /// A real corner at one height: the spots of the two surfaces where they meet.
  struct CornerSpots {
    int corner = -1, left = 0, right = 0;
    double z = 0;
  };
  /// Of the corner that wall `wall` counts from; -1 as its corner in a room without corners.
  CornerSpots corner_of(int wall, int first_wall, double z);
  /// How far the real corner lies from where the base lines meet, in plan.
  Vec2 corner_offset(const CornerSpots& at, int room) const;

 private:
  CornerSpots add_corner(int corner, double z);
  Vec2 corner_point(const CornerSpots& at, int room) const;
  BlockHere here(const Block& block, int wall, int room) const;
  void add_spots(int wall);
  double base_along(const Block& block, int wall, double reading, int room) const;
  double corner_along(int corner, int wall, int room) const;

  SurfaceField fields_;
  SiteView adjusted_;
  std::vector<std::string> names_;
  std::vector<bool> ends_;  // by wall
  std::vector<std::vector<Block>> blocks_;
  std::vector<CornerSpots> corners_;
  std::vector<std::vector<int>> floor_spots_;
};

}  // namespace nook
