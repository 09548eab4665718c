// Where the walls' base lines lie in the room frame, from corner angles and lengths.
#pragma once

#include <vector>

#include "survey/room_model.h"

namespace nook {

/// A point in plan, room frame.
struct VariedPoint {
  Varied x, y;
};
inline VariedPoint operator+(const VariedPoint& a, const VariedPoint& b) {
  return {a.x + b.x, a.y + b.y};
}
inline VariedPoint operator-(const VariedPoint& a) {
  return {-a.x, -a.y};
}
inline VariedPoint operator*(const Varied& k, const VariedPoint& a) {
  return {k * a.x, k * a.y};
}
/// Turned anticlockwise by 90 degrees.
inline VariedPoint left_of(const VariedPoint& a) {
  return {-a.y, a.x};
}

/// A wall's base line in plan: where it starts and its unit directions.
struct VariedWall {
  VariedPoint start, along, out;
};

/// The value of an unknown with its own slope.
Varied unknown(const State& state, int index);

/// Every wall, in the frame of the model's origin corner.
std::vector<VariedWall> base_lines(const RoomModel& model, const State& state);

}  // namespace nook
