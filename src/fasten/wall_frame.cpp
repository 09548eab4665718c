// Tape readings on a wall against its base line.
#include "fasten/wall_frame.h"

namespace nook {

double WallFrame::floor_z(double base) const {
  return room_.floor.z(shape().room_from_wall(base, 0));
}

std::optional<double> WallFrame::ceiling_z(double base) const {
  if (!room_.ceiling) return std::nullopt;
  return room_.ceiling->z(shape().room_from_wall(base, 0));
}

std::optional<double> WallFrame::z(const Height& height, double base) const {
  if (!height.from_line) return floor_z(base) + height.value.mm;
  if (!room_.line_z) return std::nullopt;
  return *room_.line_z + height.value.mm;
}

double WallFrame::start(double z) const {
  const int count = static_cast<int>(room_.walls.size());
  if (count < 2) return 0;
  return room_.corner_along(wall_ == 0 ? 0 : wall_ - 1, wall_, z);
}

double WallFrame::end(double z) const {
  if (has_far_corner()) return room_.corner_along(wall_, wall_, z);
  return start(z) + shape().length;
}

}  // namespace nook
