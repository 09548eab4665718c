// The frame of a plan: the wall one faces lies at the top.
#pragma once

#include "room/shape.h"

namespace nook {

inline constexpr double kHeightShown = 1000;  // mm: the height at which walls are cut. Chosen
inline constexpr int kPlanStations = 24;      // points along a wall. Chosen

/// Page from room: the middle one of three walls lies at the top, else the first.
struct SeenFromAbove {
  Vec2 right, up;

  explicit SeenFromAbove(const RoomShape& room) {
    const WallShape& faced = room.walls[room.walls.size() >= 3 ? 1 : 0];
    up = -faced.out;
    right = left_of(faced.out);
  }
  Vec2 operator()(Vec2 p) const { return {dot(p, right), dot(p, up)}; }
  Vec2 operator()(Vec3 p) const { return (*this)(Vec2{p.x, p.y}); }
};

}  // namespace nook
