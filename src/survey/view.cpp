// Surfaces, corners and heights at one state, with their slopes.
#include "survey/view.h"

namespace nook {

View::View(const RoomModel& model, const State& state)
    : model_(model),
      state_(state),
      room_(room_shape(model, state)),
      walls_(base_lines(model, state)) {}

std::vector<double> View::functions(const FieldSpot& spot) const {
  const FieldWeights& field = model_.surfaces[spot.surface];
  const std::vector<double>& prior = field.basis->prior_sd();
  std::vector<double> out = field.basis->values(spot.at);
  for (std::size_t k = 0; k < out.size(); ++k) out[k] *= field.sd * prior[k];
  return out;
}

const Field& View::field_of(int surface) const {
  if (surface < model_.walls()) return room_.walls[surface].field;
  return surface == model_.floor_field() ? room_.floor.field : room_.ceiling->field;
}

Varied View::field(int surface, Vec2 at) {
  if (!model_.surfaces[surface].basis) return {};
  const int index = static_cast<int>(model_.unknowns.size() + spots_.size());
  spots_.push_back({surface, at});
  return {field_of(surface).at(at), {{index, 1}}};
}

Varied View::out(int wall, double a, double z) {
  const WallShape& shape = room_.walls[wall];
  return unknown(model_.lean[wall]) * z + field(wall, {a - shape.field_start, z}) +
         shape.mud_at(a, z);
}

Varied View::from_corner(int k, int wall, const Varied& distance) const {
  const bool counts_back = wall == k && k > 0;
  return counts_back ? unknown(model_.length[k]) - distance : distance;
}

const CornerSpot& View::corner(int k, double z, double left_board, double right_board) {
  const auto [place, fresh] = corners_.try_emplace({k, z, left_board, right_board});
  if (!fresh) return place->second;
  const double at_left = room_.corner_along(k, k, z), at_right = room_.corner_along(k, k + 1, z);
  const Varied left = out(k, at_left, z) + left_board;
  const Varied right = out(k + 1, at_right, z) + right_board;
  // Where lines `left` and `right` out of the base lines cross: symmetric in both walls.
  const Varied angle = unknown(model_.angle[k]);
  const Varied c = cosine(angle), s = sine(angle);
  place->second = {(right + left * c) / s, (left + right * c) / s};
  return place->second;
}

double View::z_of(const Height& height, int wall, double a) const {
  if (height.from_line) return room_.line_z.value_or(0) + height.value.mm;
  return room_.floor.z(room_.walls[wall].room_from_wall(a, 0)) + height.value.mm;
}

double View::z_along(const Height& height, int wall, double reading, bool from_right) const {
  return z_of(height, wall, from_right ? room_.walls[wall].length - reading : reading);
}

double View::base_along(int wall, double reading, double z, bool from_right) {
  if (model_.corners() == 0) return reading;
  const int k = wall == 0 ? 0 : from_right ? wall : wall - 1;
  const auto [place, fresh] = corner_points_.try_emplace({k, z});
  if (fresh) place->second = room_.corner_at(k, z);
  const double a = room_.walls[wall].wall_from_room(place->second).x;
  return from_right ? a - reading : a + reading;
}

VariedPoint View::point(int wall, const Varied& a, double z, double board) {
  const VariedWall& line = walls_[wall];
  return line.start + a * line.along + (out(wall, a.value, z) + board) * line.out;
}

Varied View::rise(int surface, int first_slope, Vec2 p) {
  const Vec2 spot = room_.floor.field_from_room(p);
  return unknown(first_slope) * spot.x + unknown(first_slope + 1) * spot.y + field(surface, spot) -
         field(surface, {0, 0});
}

}  // namespace nook
