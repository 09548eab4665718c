// Points and directions in plan and in space, in millimeters; plain values without a library.
#pragma once

#include <cmath>
#include <vector>

namespace nook {

struct Vec2 {
  double x = 0, y = 0;

  friend constexpr bool operator==(Vec2, Vec2) = default;
  friend constexpr Vec2 operator+(Vec2 a, Vec2 b) { return {a.x + b.x, a.y + b.y}; }
  friend constexpr Vec2 operator-(Vec2 a, Vec2 b) { return {a.x - b.x, a.y - b.y}; }
  friend constexpr Vec2 operator-(Vec2 a) { return {-a.x, -a.y}; }
  friend constexpr Vec2 operator*(double k, Vec2 a) { return {k * a.x, k * a.y}; }
};
constexpr double dot(Vec2 a, Vec2 b) {
  return a.x * b.x + a.y * b.y;
}
/// Positive where b lies anticlockwise of a.
constexpr double cross(Vec2 a, Vec2 b) {
  return a.x * b.y - a.y * b.x;
}
inline double norm(Vec2 a) {
  return std::hypot(a.x, a.y);
}
/// The direction turned anticlockwise by 90 degrees.
constexpr Vec2 left_of(Vec2 a) {
  return {-a.y, a.x};
}

struct Vec3 {
  double x = 0, y = 0, z = 0;

  friend constexpr bool operator==(Vec3, Vec3) = default;
  friend constexpr Vec3 operator+(Vec3 a, Vec3 b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
  friend constexpr Vec3 operator-(Vec3 a, Vec3 b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
  friend constexpr Vec3 operator-(Vec3 a) { return {-a.x, -a.y, -a.z}; }
  friend constexpr Vec3 operator*(double k, Vec3 a) { return {k * a.x, k * a.y, k * a.z}; }
};
constexpr double dot(Vec3 a, Vec3 b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
constexpr Vec3 cross(Vec3 a, Vec3 b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline double norm(Vec3 a) {
  return std::sqrt(dot(a, a));
}

/// A simple closed outline without its first point repeated; anticlockwise where it bounds
/// material.
using Polygon = std::vector<Vec2>;

/// An outline with holes.
struct Region {
  Polygon outline;
  std::vector<Polygon> holes;
};

}  // namespace nook
