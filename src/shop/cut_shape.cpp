// The shape of a piece as its corners, and what was measured of it against what is wanted there.
#include "shop/cut_shape.h"

#include <algorithm>
#include <cmath>

#include "shop/cut_disagreement.h"
#include "shop/measured_on.h"

namespace nook {
namespace {

// Of the sizes, `wild` is wood that is still on besides what is wanted.
struct Sizes {
  const std::vector<CheckedAt>& readings;
  Reads (*at)(const Polygon&, double);
  double wild;
};
std::vector<CutStation> stations(const Sizes& sizes, const Polygon& outline,
                                 const CornerVector& off) {
  const auto& [readings, at, wild] = sizes;
  std::vector<CutStation> all;
  for (const CheckedAt& reading : readings) {
    const auto from = at(outline, reading.at.mm);
    const double wanted = from(outline) - wild;
    const double aside = at(outline, reading.at.mm + kAstray)(outline) - from(outline);
    all.push_back({reading.at.mm, wanted, slope(from, outline, off),
                   from(with_corners(outline, off)) - wanted, std::hypot(1, aside / kAstray)});
  }
  std::sort(all.begin(), all.end(),
            [](const CutStation& a, const CutStation& b) { return a.at < b.at; });
  return all;
}

CutStation crossing(const Polygon& outline, const CornerVector& off) {
  const Reads from = crossed(outline);
  const double wanted = from(outline);
  return {0, wanted, slope(from, outline, off), from(with_corners(outline, off)) - wanted, 1};
}

// From the corners of an outline's bounds to those of another.
CornerVector corners_between(const Polygon& from, const Polygon& to) {
  const Box2 a = box_of(from), b = box_of(to);
  const Vec2 low = b.low - a.low, high = b.high - a.high;
  return {low.x, low.y, high.x, low.y, high.x, high.y, low.x, high.y};
}

CornerVector plus(CornerVector a, const CornerVector& b) {
  for (int i = 0; i < kCorners; ++i) a[i] += b[i];
  return a;
}

}  // namespace

bool is_shaped(const Polygon& outline) {
  constexpr double kFar = 0.1;  // of the piece's lesser size. Chosen
  const Box2 b = box_of(outline);
  const Vec2 size = b.high - b.low;
  return std::any_of(std::begin(kAround), std::end(kAround), [&](PieceCorner corner) {
    return norm(outline[vertex_at(outline, corner)] - corner_of(b, corner)) >
           kFar * std::min(size.x, size.y);
  });
}

Polygon with_corners(const Polygon& outline, const CornerVector& off) {
  const Box2 b = box_of(outline);
  Polygon moved = outline;
  for (Vec2& p : moved) {
    const double s = (p.x - b.low.x) / (b.high.x - b.low.x);
    const double t = (p.y - b.low.y) / (b.high.y - b.low.y);
    const double share[] = {(1 - s) * (1 - t), s * (1 - t), s * t, (1 - s) * t};
    for (int c = 0; c < 4; ++c) p = p + share[c] * Vec2{off[2 * c], off[2 * c + 1]};
  }
  return moved;
}

CutShape cut_shape(const PieceAsCut& piece, const NeededPiece& needed, double sd) {
  const MeasuredOn on = measured_on(piece, needed);
  const std::vector<Taped> readings = tape_reads(piece, on.outline, sd);
  const Box2 b = box_of(needed.outline);
  CutShape shape{
      NormalEquations(kOpen), {}, b.high.x - b.low.x, b.high.y - b.low.y, {}, {}, {}, {}};
  const Solved all = solved(readings, on.outline);
  shape.equations = all.equations;
  shape.off = plus(all.off, corners_between(needed.outline, on.outline));
  shape.widths = stations({piece.widths, width_at, on.across}, on.outline, all.off);
  shape.heights = stations({piece.heights, height_at, on.up}, on.outline, all.off);
  const Vec2 low = box_of(needed.fitted).low;
  for (CutStation& s : shape.widths)
    s.scribed = std::max(0.0, s.wanted - chord_level(needed.fitted, low.y + s.at).length());
  for (CutStation& s : shape.heights)
    s.scribed = std::max(0.0, s.wanted - chord_upright(needed.fitted, low.x + s.at).length());
  shape.crossed = crossing(on.outline, all.off);
  shape.disagreement = disagreement(readings, on.outline, all);
  return shape;
}

std::array<Vec2, 4> corners_of(const Polygon& outline, const Polygon& needed) {
  std::array<Vec2, 4> corners;
  for (const PieceCorner corner : kAround) corners[corner] = outline[vertex_at(needed, corner)];
  return corners;
}

PieceAsCut read_from(const Polygon& outline, PieceAsCut piece, const Polygon& needed) {
  const auto take = [&](CheckedAt& reading, const Reads& from) {
    for (Length& value : reading.measured) value = millimetres(from(outline));
  };
  for (CheckedAt& width : piece.widths) take(width, width_at(needed, width.at.mm));
  for (CheckedAt& height : piece.heights) take(height, height_at(needed, height.at.mm));
  for (size_t k = 0; k < piece.diagonals.size() && k < 2; ++k)
    take(piece.diagonals[k], diagonal(needed, k));
  return piece;
}

}  // namespace nook
