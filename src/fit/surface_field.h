// Humps and hollows at fixed spots of all surfaces, in the adjusted room and in every draw at once.
#pragma once

#include <vector>

#include "room/shape.h"

namespace nook {

struct Surface {
  enum class Kind { wall, floor, ceiling, part };
  Kind kind = Kind::wall;
  int wall = 0;

  friend bool operator==(const Surface&, const Surface&) = default;
};

/// The field of a surface at a spot of one room, mm (of floor and ceiling: less the one at the
/// origin).
double field_height(const RoomShape& room, Surface surface, Vec2 at);

/// Fields at spots: (along, z) on a wall, (x, y) on floor and ceiling. Room 0 is the adjusted one,
/// room r > 0 is draw r - 1. One matrix product instead of a sum of sines per spot and draw.
class SurfaceField {
 public:
  SurfaceField(const RoomShape& room, const std::vector<RoomShape>& draws)
      : room_(room), draws_(draws) {}

  int rooms() const { return 1 + static_cast<int>(draws_.size()); }
  const RoomShape& room(int r) const { return r == 0 ? room_ : draws_[r - 1]; }

  /// A new spot; its value in room 0 stands at once, in the draws after `fill_draws` if `in_draws`.
  int add(Surface surface, Vec2 at, bool in_draws);
  /// Moves the adjusted surface at one spot, mm.
  void nudge(int spot, double by) { spots_[spot].adjusted += by; }
  Vec2 at(int spot) const { return spots_[spot].at; }
  /// Computes every spot that was added `in_draws`, in all draws.
  void fill_draws();

  /// As field_height, in any room.
  double value(int spot, int r) const {
    return r == 0 ? spots_[spot].adjusted : drawn_[spots_[spot].row + (r - 1) * rows_];
  }

 private:
  struct Spot {
    Surface surface;
    Vec2 at;
    double adjusted = 0;
    long row = -1;  // of the draws
  };
  void fill_surface(Surface surface, const std::vector<int>& spots);

  const RoomShape& room_;
  const std::vector<RoomShape>& draws_;
  std::vector<Spot> spots_;
  std::vector<double> drawn_;
  long rows_ = 0;
};

}  // namespace nook
