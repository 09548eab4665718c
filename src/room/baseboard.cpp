// The face of a baseboard, from its profile.
#include "room/baseboard.h"

namespace nook {
namespace {

Length between(const ProfilePoint& low, const ProfilePoint& high, Length height) {
  const Length rise = high.height - low.height;
  return rise.mm > 0 ? low.out + ((height - low.height) / rise) * (high.out - low.out) : high.out;
}

Length board_face(const Baseboard& board, Length height) {
  const auto& points = board.profile;
  if (points.empty()) return board.thickness;
  if (height <= points.front().height) return points.front().out;
  for (std::size_t i = 1; i < points.size(); ++i)
    if (height <= points[i].height) return between(points[i - 1], points[i], height);
  return points.back().out;
}

}  // namespace

Length stand_out(const Baseboard& board, Length height) {
  if (height > board.height || height.mm < 0) return {};
  const Length face = board_face(board, height);
  return height < kShoeHeight ? face + board.shoe : face;
}

}  // namespace nook
