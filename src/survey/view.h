// The room at one state, with slopes: what readings are written in.
#pragma once

#include <map>
#include <tuple>

#include "survey/base_lines.h"
#include "survey/room_model.h"

namespace nook {

/// The real corner at one height: its distance from the base corner along either wall.
struct CornerSpot {
  Varied left, right;
};

/// Where a reading stands on a field is taken from the state and has no slope of its own: the slope
/// of a field, under 1 %, times the step of an adjustment is nothing. The state must outlive it.
class View {
 public:
  View(const RoomModel& model, const State& state);

  const RoomModel& model() const { return model_; }
  const RoomShape& room() const { return room_; }
  const State& state() const { return state_; }

  /// Spots of fields looked at so far; slope index model().unknowns.size() + k is spot k.
  struct FieldSpot {
    int surface = 0;
    Vec2 at;
  };
  const std::vector<FieldSpot>& spots() const { return spots_; }
  /// The functions of a field at a spot, for weights scaled to N(0, 1), mm.
  std::vector<double> functions(const FieldSpot& spot) const;

  /// The value of an unknown.
  Varied unknown(int index) const { return nook::unknown(state_, index); }
  /// How far wall `wall` stands out of its base line at base-line distance a, height z.
  Varied out(int wall, double a, double z);
  /// The real corner k at height z, where boards stand out of either wall by so much.
  const CornerSpot& corner(int k, double z, double left_board = 0, double right_board = 0);
  /// Room height of what counts from the floor at base-line distance a of a wall, or from the line.
  double z_of(const Height& height, int wall, double a) const;
  /// Room height of a reading along a wall, counted from its real corner or its right one.
  double z_along(const Height& height, int wall, double reading, bool from_right) const;
  /// Base-line distance of a reading from a wall's real corner at z.
  double base_along(int wall, double reading, double z, bool from_right);
  /// The surface point of wall `wall` in plan, at base-line distance a.
  VariedPoint point(int wall, const Varied& a, double z, double board = 0);
  /// Base-line distance on `wall`, left or right wall of corner k, of a distance from that corner.
  Varied from_corner(int k, int wall, const Varied& distance) const;
  /// Height of floor or ceiling at p, less what it has at the origin.
  Varied rise(int surface, int first_slope, Vec2 p);

 private:
  const Field& field_of(int surface) const;
  Varied field(int surface, Vec2 at);

  const RoomModel& model_;
  const State& state_;
  RoomShape room_;
  std::vector<FieldSpot> spots_;
  std::map<std::tuple<int, double, double, double>, CornerSpot> corners_;
  std::map<std::pair<int, double>, Vec2> corner_points_;
  std::vector<VariedWall> walls_;
};

}  // namespace nook
