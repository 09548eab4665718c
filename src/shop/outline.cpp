// Edges moved square to themselves, their ends along the neighbors' lines.
#include "shop/outline.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

constexpr double kInLine = 0.2;  // sine of the angle under which a neighbor is in line. Chosen
constexpr double kOnSide = 0.9;  // cosine of the angle within which an edge lies on a side. Chosen

// `point` slid along `line` (unit) until it lies `by` further out along `out` (unit).
Vec2 slid(Vec2 point, Vec2 line, Vec2 out, double by) {
  const double share = dot(line, out);
  return std::abs(share) < kInLine ? point + by * out : point + (by / share) * line;
}

Vec2 unit(Vec2 a) {
  return (1 / norm(a)) * a;
}

}  // namespace

Polygon moved(const Polygon& outline, EdgeRun run, EdgeMove by) {
  const int n = static_cast<int>(outline.size());
  const int first = run.first, last = (run.last + 1) % n;
  const int before = (first + n - 1) % n, after = (last + 1) % n;
  const Vec2 along = unit(outline[last] - outline[first]);
  const Vec2 out = -left_of(along);
  const double length = norm(outline[last] - outline[first]);
  Polygon result = outline;
  for (int k = first; k != last; k = (k + 1) % n) {
    const double share = dot(outline[k] - outline[first], along) / length;
    result[k] = outline[k] + (by.first + share * (by.last - by.first)) * out;
  }
  result[first] = slid(outline[first], unit(outline[first] - outline[before]), out, by.first);
  result[last] = slid(outline[last], unit(outline[after] - outline[last]), out, by.last);
  return result;
}

std::optional<EdgeRun> run_of(const Polygon& outline, const EdgeChoice& edge) {
  if (const EdgeSide* side = std::get_if<EdgeSide>(&edge)) return side_of(outline, *side);
  if (const EdgeRun* run = std::get_if<EdgeRun>(&edge)) return *run;
  return std::nullopt;
}

std::optional<EdgeSide> side_meant(const Polygon& outline, const EdgeChoice& edge) {
  if (const EdgeSide* side = std::get_if<EdgeSide>(&edge)) return *side;
  const EdgeRun* run = std::get_if<EdgeRun>(&edge);
  if (!run) return std::nullopt;
  const int last = (run->last + 1) % static_cast<int>(outline.size());
  const Vec2 out = -left_of(unit(outline[last] - outline[run->first]));
  if (out.x < -kOnSide) return EdgeSide::left;
  if (out.x > kOnSide) return EdgeSide::right;
  if (out.y < -kOnSide) return EdgeSide::bottom;
  if (out.y > kOnSide) return EdgeSide::top;
  return std::nullopt;
}

Chord chord_level(const Polygon& outline, double v) {
  const Box2 bounds = box_of(outline);
  const double hair = 1e-9 * (bounds.high.y - bounds.low.y);  // just inside, where edges are level
  v = std::clamp(v, bounds.low.y + hair, bounds.high.y - hair);
  Chord chord{bounds.high.x, bounds.low.x};
  for (size_t i = 0; i < outline.size(); ++i) {
    const Vec2 a = outline[i], b = outline[(i + 1) % outline.size()];
    if ((a.y <= v) == (b.y <= v)) continue;
    const double u = a.x + (b.x - a.x) * (v - a.y) / (b.y - a.y);
    chord = {std::min(chord.from, u), std::max(chord.to, u)};
  }
  return chord;
}

Polygon on_its_side(Polygon outline) {
  for (Vec2& p : outline) std::swap(p.x, p.y);
  return outline;
}

Chord chord_upright(const Polygon& outline, double u) {
  return chord_level(on_its_side(outline), u);
}

Vec2 corner_of(const Box2& box, PieceCorner corner) {
  const bool right = corner == lower_right || corner == upper_right;
  const bool up = corner == upper_left || corner == upper_right;
  return {right ? box.high.x : box.low.x, up ? box.high.y : box.low.y};
}

size_t vertex_at(const Polygon& outline, PieceCorner corner) {
  const Vec2 end = corner_of(box_of(outline), corner);
  size_t best = 0;
  for (size_t i = 1; i < outline.size(); ++i)
    if (norm(outline[i] - end) < norm(outline[best] - end)) best = i;
  return best;
}

}  // namespace nook
