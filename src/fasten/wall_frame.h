// One wall of a concrete room as a person measures on it: along from its corner, height from the
// floor.
#pragma once

#include <optional>

#include "room/shape.h"
#include "room/survey.h"

namespace nook {

/// Converts between what a tape on the wall reads and base-line coordinates (a, z): a along the
/// base line of WallShape, z up in the room frame. A plumb line has one a at every height.
class WallFrame {
 public:
  WallFrame(const RoomShape& room, int wall) : room_(room), wall_(wall) {}

  const WallShape& shape() const { return room_.walls[wall_]; }
  double base(double along, double z, bool from_right = false) const {
    return room_.base_along(wall_, along, z, from_right);
  }
  /// As in every answer: from the wall's left corner, on the first wall from its only one.
  double along(double base, double z) const { return room_.read_along(wall_, base, z); }
  /// Of the floor under the wall at `base`.
  double floor_z(double base) const;
  /// Of the ceiling over it, where one was measured.
  std::optional<double> ceiling_z(double base) const;
  /// z of a height read at `base`; none where it counts from a level line that nothing places.
  std::optional<double> z(const Height& height, double base) const;
  /// Whether the wall meets another one at its far end.
  bool has_far_corner() const {
    return wall_ > 0 && wall_ + 1 < static_cast<int>(room_.walls.size());
  }
  /// Base-line distances of the wall's two ends at height z, the lesser first.
  double start(double z) const;
  double end(double z) const;

 private:
  const RoomShape& room_;
  int wall_;
};

/// The height of a stud reading or corner that names none (documented default: 1 m).
inline constexpr double kUsualHeight = 1000;

}  // namespace nook
