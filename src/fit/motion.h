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
  Frame frame(const Frame& f) const;
  static Vec3 turned(Direction t, Vec3 d) {
    return {t.cos * d.x - t.sin * d.y, t.sin * d.x + t.cos * d.y, d.z};
  }
};

/// A motion with its sine and cosine at hand, for many frames.
class Moved {
 public:
  explicit Moved(const Motion& by) : turn_(direction({by.turn})), move_(by.move) {}
  Frame frame(const Frame& f) const {
    return {Motion::turned(turn_, f.at) + move_, Motion::turned(turn_, f.u),
            Motion::turned(turn_, f.v), Motion::turned(turn_, f.w)};
  }

 private:
  Direction turn_;
  Vec3 move_;
};
inline Frame Motion::frame(const Frame& f) const {
  return Moved(*this).frame(f);
}

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
