// Edges chosen where the tape lies, read as lines.
#include "shop/level_tape.h"

#include <algorithm>
#include <cmath>

#include "shop/outline.h"

namespace nook {
namespace {

constexpr double kPast = 6.35;  // mm, 1/4 in past a corner is a slip of the hand. Chosen
constexpr double kInside = 1;   // mm inside a corner, where its side is met. Chosen
constexpr double kLevel =
    1;  // mm that an edge rises at least, else a tape meets it nowhere. Chosen
constexpr double kQuarter =
    0.25;  // of the height: a corner further down is none of the top. Chosen

// The lowest of the corners at the top of an outline: the vertices nearest to its box's corners.
double top_corner(const Polygon& outline, const Box2& box) {
  double lowest = box.high.y;
  for (const PieceCorner corner : {upper_left, upper_right}) {
    const Vec2 nearest = outline[vertex_at(outline, corner)];
    if (nearest.y > box.high.y - kQuarter * (box.high.y - box.low.y))
      lowest = std::min(lowest, nearest.y);
  }
  return lowest;
}

Polygon upside_down(Polygon outline) {
  for (Vec2& p : outline) p.y = -p.y;
  return outline;
}

// The level at which the sides are met that a tape at v touches at the top.
double below_top(const Polygon& outline, double v) {
  const Box2 box = box_of(outline);
  const double corner = top_corner(outline, box);
  const bool at_corner = v > corner - kInside && (v <= corner + kPast || v > box.high.y);
  return at_corner ? corner - kInside : v;
}

// Where the line through an edge is at a level; anywhere along it where the edge is level itself.
double on_line(const Polygon& outline, std::size_t edge, double v) {
  const Vec2 a = outline[edge], b = outline[(edge + 1) % outline.size()];
  const double rise = b.y - a.y;
  return a.x +
         (b.x - a.x) * (v - a.y) / (std::abs(rise) < kLevel ? std::copysign(kLevel, rise) : rise);
}

}  // namespace

LevelTape::LevelTape(const Polygon& outline, double v) {
  v = -below_top(upside_down(outline), -below_top(outline, v));
  bool any = false;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    if ((outline[i].y <= v) == (outline[(i + 1) % outline.size()].y <= v)) continue;
    if (!any) from_ = to_ = i;
    any = true;
    const double u = on_line(outline, i, v);
    if (u < on_line(outline, from_, v)) from_ = i;
    if (u > on_line(outline, to_, v)) to_ = i;
  }
}

double LevelTape::read(const Polygon& outline, double at) const {
  const Box2 box = box_of(outline);
  const double v = std::clamp(box.low.y + at, box.low.y - kPast, box.high.y + kPast);
  return on_line(outline, to_, v) - on_line(outline, from_, v);
}

}  // namespace nook
