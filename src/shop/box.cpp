// Hulls, least rectangles and boxes in the frames of the pieces.
#include "shop/box.h"

#include <algorithm>
#include <array>
#include <limits>

#include "base/invariant.h"
#include "solid/cells.h"

namespace nook {
namespace {

constexpr double kShortest = 1e-6;  // mm; a shorter side of a hull is rounding. Chosen

struct Extent {
  double low = std::numeric_limits<double>::infinity();
  double high = -std::numeric_limits<double>::infinity();

  void take(double x) { low = std::min(low, x), high = std::max(high, x); }
  double span() const { return high - low; }
};

Rectangle along(const std::vector<Vec2>& hull, Vec2 direction) {
  Extent length, width;
  for (const Vec2 p : hull) {
    length.take(dot(p, direction));
    width.take(dot(p, left_of(direction)));
  }
  if (length.span() < width.span()) return {left_of(direction), width.span(), length.span()};
  return {direction, length.span(), width.span()};
}

Box sorted_box(std::array<double, 3> sides) {
  std::sort(sides.begin(), sides.end());
  return {sides[2], sides[1], sides[0]};
}

Box box_along(const std::vector<Vec3>& points, const std::array<Vec3, 3>& axes) {
  std::array<Extent, 3> extents;
  for (const Vec3 p : points)
    for (int k = 0; k < 3; ++k) extents[k].take(dot(p, axes[k]));
  return sorted_box({extents[0].span(), extents[1].span(), extents[2].span()});
}

bool same(Box a, Box b) {
  constexpr double kSame = 1e-6;  // mm. Chosen
  return std::abs(a.length - b.length) < kSame && std::abs(a.width - b.width) < kSame &&
         std::abs(a.thickness - b.thickness) < kSame;
}

std::array<Vec3, 3> upright_axes(const std::vector<Vec3>& points) {
  std::vector<Vec2> plan;
  for (const Vec3 p : points) plan.push_back({p.x, p.y});
  const Vec2 d = least_rectangle(plan).direction;
  return {Vec3{d.x, d.y, 0}, Vec3{-d.y, d.x, 0}, Vec3{0, 0, 1}};
}

}  // namespace

Rectangle least_rectangle(const std::vector<Vec2>& points) {
  const std::vector<Vec2> hull = hull_of(points);
  require(hull.size() >= 3, "a rectangle goes round an area");
  Rectangle least{{1, 0}, 0, std::numeric_limits<double>::infinity()};
  for (size_t i = 0; i < hull.size(); ++i) {
    const Vec2 side = hull[(i + 1) % hull.size()] - hull[i];
    if (norm(side) < kShortest) continue;
    const Rectangle r = along(hull, (1 / norm(side)) * side);
    if (r.width < least.width - 1e-9) least = r;
  }
  return least;
}

Box box_of(const Polygon& outline, double thickness) {
  const Rectangle around = least_rectangle(outline);
  return sorted_box({around.length, around.width, thickness});
}

std::vector<Vec3> corners_of(const CarriedPiece& piece) {
  std::vector<Vec3> corners;
  for (const double w : {0.0, piece.thickness})
    for (const Vec2 p : piece.outline)
      corners.push_back(piece.frame.room_from_piece({p.x, p.y, w}));
  return corners;
}

std::vector<Box> boxes_of(const std::vector<CarriedPiece>& joined) {
  std::vector<Vec3> points;
  for (const CarriedPiece& piece : joined) {
    const std::vector<Vec3> corners = corners_of(piece);
    points.insert(points.end(), corners.begin(), corners.end());
  }
  std::vector<Box> boxes;
  const auto add = [&](Box box) {
    if (std::none_of(boxes.begin(), boxes.end(), [&](Box b) { return same(b, box); }))
      boxes.push_back(box);
  };
  add(box_along(points, upright_axes(points)));
  for (const CarriedPiece& piece : joined)
    add(box_along(points, {piece.frame.u, piece.frame.v, piece.frame.w}));
  return boxes;
}

}  // namespace nook
