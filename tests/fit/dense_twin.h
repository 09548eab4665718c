// A slow second opinion on a fit: rays stepped through the room and pieces filled with points.
// Shares no code with fit/: only the room's own surfaces and the plain answer.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "fit/fit_answer.h"
#include "room/shape.h"
#include "room/survey.h"

namespace nook::twin {

/// Whether a point of the room is inside something solid.
using Solid = std::function<bool(Vec3)>;

class DenseRoom {
 public:
  DenseRoom(const RoomShape& room, const Survey& survey) : room_(room), survey_(survey) {}

  Solid wall(int index) const;
  /// Board, shoe and obstacles of a wall, as they stand on it.
  Solid blocks(int index) const;
  Solid floor() const;
  int wall_named(const std::string& meets) const;

 private:
  const RoomShape& room_;
  const Survey& survey_;
};

/// A rectangular piece where it stands, less the given notches.
Solid piece(const FitAnswer& fit, int index, bool less_notches);

/// The gap from a point along a way to a solid, to 0.001 mm: stepped by 0.5 mm, then halved.
/// Negative where the point is inside. Nothing within 300 mm.
std::optional<double> stepped_gap(const Solid& solid, Vec3 from, Vec3 way);

/// How deep the deepest of many points of a piece lies in a solid, square to `out`; 0 if none does.
double deepest_point(const FitAnswer& fit, int index, const Solid& solid, Vec3 out);

/// The same solid or another.
Solid either(Solid a, Solid b);

}  // namespace nook::twin
