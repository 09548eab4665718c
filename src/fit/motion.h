// How a group moves as a whole: turned about the room's upright origin line, then moved.
#pragma once

#include "base/length.h"
#include "base/vector.h"
#include "design/piece.h"

namespace nook {

struct Motion {
  double turn = 0;  // radians, anticlockwise seen from above
  Vec3 move;

  Vec3 way(Vec3 d) const { return turned(direction({turn}), d); }
  Vec3 point(Vec3 p) const { return way(p) + move; }
  Frame frame(const Frame& f) const {
    const Direction t = direction({turn});
    return {turned(t, f.at) + move, turned(t, f.u), turned(t, f.v), turned(t, f.w)};
  }
  static Vec3 turned(Direction t, Vec3 d) {
    return {t.cos * d.x - t.sin * d.y, t.sin * d.x + t.cos * d.y, d.z};
  }
};

/// How fast a point in plan moves when it turns about the origin.
constexpr Vec2 turning(Vec2 p) {
  return left_of(p);
}
constexpr Vec2 plan(Vec3 p) {
  return {p.x, p.y};
}

/// The motion that turns by `turn` about `pivot` and then moves by `move`.
inline Motion turned_about(Vec2 pivot, double turn, Vec3 move) {
  const Vec3 p{pivot.x, pivot.y, 0};
  return {turn, move + p - Motion{turn, {}}.way(p)};
}

}  // namespace nook
