// Random outlines, plain and degenerate, on the grid of outlines.
#pragma once

#include <cmath>
#include <random>

#include "solid/boolean.h"

namespace nook::twin {

using Random = std::mt19937_64;

inline double even(Random& random, double low, double high) {
  return low + (high - low) * static_cast<double>(random() >> 11) * 0x1p-53;
}

inline Vec2 snapped(Vec2 p) {
  return {std::round(p.x / kOutlineGrid) * kOutlineGrid,
          std::round(p.y / kOutlineGrid) * kOutlineGrid};
}

/// A star-shaped outline about a point: never crosses itself.
inline Polygon star(Random& random, Vec2 middle, double radius, int points) {
  Polygon polygon;
  for (int i = 0; i < points; ++i) {
    const double turn = 2 * std::acos(-1.0) * (i + even(random, 0.1, 0.9)) / points;
    polygon.push_back(
        snapped(middle + even(random, 0.3, 1) * radius * Vec2{std::cos(turn), std::sin(turn)}));
  }
  return polygon;
}

/// A rectangle with whole tens as corners: pairs share edges, corners and whole sides.
inline Polygon brick(Random& random) {
  const double x = 10 * std::floor(even(random, 0, 6)), y = 10 * std::floor(even(random, 0, 6));
  const double w = 10 * std::floor(even(random, 1, 5)), h = 10 * std::floor(even(random, 1, 5));
  return {{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}};
}

/// A rectangle turned by a hair: nearly coincident sides.
inline Polygon leaning_brick(Random& random, double turn) {
  Polygon polygon = brick(random);
  for (Vec2& p : polygon)
    p = snapped(
        {p.x * std::cos(turn) - p.y * std::sin(turn), p.x * std::sin(turn) + p.y * std::cos(turn)});
  return polygon;
}

/// A rectangle with a smaller one cut out, which may touch nothing.
inline Region frame(Random& random) {
  const Polygon outer = brick(random);
  const Vec2 low = outer[0], high = outer[2];
  const double a = even(random, 0.1, 0.4), b = even(random, 0.6, 0.9);
  const Vec2 p = snapped(low + a * (high - low)), q = snapped(low + b * (high - low));
  return {outer, {{{p.x, p.y}, {p.x, q.y}, {q.x, q.y}, {q.x, p.y}}}};
}

inline Region shape(Random& random, int kind) {
  switch (kind % 5) {
    case 0:
      return {star(random, {even(random, 0, 50), even(random, 0, 50)}, 40, 3 + kind % 40), {}};
    case 1:
      return {brick(random), {}};
    case 2:
      return {leaning_brick(random, 1e-9), {}};
    case 3:
      return frame(random);
    default:
      return {leaning_brick(random, even(random, -1e-4, 1e-4)), {}};
  }
}

}  // namespace nook::twin
