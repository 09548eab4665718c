// Notches taken out by exact Booleans, and listed as a person cuts them.
#include "shop/cut_notches.h"

#include <algorithm>
#include <cmath>

#include "solid/boolean.h"
#include "solid/simplified.h"

namespace nook {
namespace {

constexpr double kBeyond = 50;     // mm that a notch is carried out beyond its edge. Chosen
constexpr double kNotSquare = 50;  // mm^2 that a notch may lack of a square one. Chosen
constexpr double kFollows = 0.4;   // mm, 1/64 in, that a listed outline may stray. Chosen

// The way out of the piece where a point lies on a side of it, or on two; 0 inside.
Vec2 way_out(Vec2 p, const Box2& drawn) {
  const auto at = [](double x, double low, double high) {
    return x < low + kAtEdge ? -kBeyond : x > high - kAtEdge ? kBeyond : 0;
  };
  return {at(p.x, drawn.low.x, drawn.high.x), at(p.y, drawn.low.y, drawn.high.y)};
}

// A notch, and strips that carry it beyond the edges it opens to: the finished
// edge may lie further out than the drawn one.
void add_to_cut_out(std::vector<Polygon>& rings, const NotchFit& notch, const Box2& drawn) {
  const size_t n = notch.polygon.size();
  rings.push_back(notch.polygon);
  for (size_t i = 0; i < n; ++i) {
    const Vec2 a = notch.polygon[i], b = notch.polygon[(i + 1) % n];
    const Vec2 out_a = way_out(a, drawn), out_b = way_out(b, drawn);
    if (out_a.x != 0 && out_a.x == out_b.x)
      rings.push_back({a, b, b + Vec2{out_a.x, 0}, a + Vec2{out_a.x, 0}});
    if (out_a.y != 0 && out_a.y == out_b.y)
      rings.push_back({a, b, b + Vec2{0, out_a.y}, a + Vec2{0, out_a.y}});
    if (out_a.x != 0 && out_a.y != 0)
      rings.push_back({a, a + Vec2{out_a.x, 0}, a + out_a, a + Vec2{0, out_a.y}});
  }
}

Polygon largest(const Regions& regions) {
  const auto best = std::max_element(
      regions.begin(), regions.end(),
      [](const auto& a, const auto& b) { return signed_area(a.outline) < signed_area(b.outline); });
  return best == regions.end() ? Polygon{} : best->outline;
}

// Whether it fills its own bounds.
bool is_square(const Polygon& polygon) {
  const Box2 b = box_of(polygon);
  const Vec2 size = b.high - b.low;
  return std::abs(signed_area(polygon)) > size.x * size.y - kNotSquare;
}

// The notch in a corner that this one is, or is part of.
const NeededNotch* corner_of(const NotchFit& notch, const NeededPiece& needed) {
  for (const NeededNotch& corner : needed.notches)
    if (corner.around == notch.around) return &corner;
  return nullptr;
}

double sign(double x) {
  return x > 0 ? 1 : x < 0 ? -1 : 0;
}

// From the sides the notch opens to into the wood; both ways along a side it opens to alone.
Vec2 into_wood(Vec2 p, const Polygon& notch, const Box2& drawn) {
  const Vec2 out = way_out(p, drawn);
  Vec2 opens;
  for (const Vec2 q : notch) opens = opens + way_out(q, drawn);
  const Box2 b = box_of(notch);
  const Vec2 from_middle = p - 0.5 * (b.low + b.high);
  return {out.x != 0 ? 0 : sign(opens.x != 0 ? -opens.x : from_middle.x),
          out.y != 0 ? 0 : sign(opens.y != 0 ? -opens.y : from_middle.y)};
}

// Fewer points, each moved into the wood by what leaving the others out may cost.
CutNotch outlined(const NotchFit& notch, const Box2& drawn) {
  const Box2 b = box_of(notch.polygon);
  CutNotch made{"", b.high.x - b.low.x, b.high.y - b.low.y,    {},
                {}, notch.around,       notch.follows_profile, 0,
                0};
  for (const Vec2 p : simplified(notch.polygon, kFollows)) {
    made.into.push_back(into_wood(p, notch.polygon, drawn));
    made.polygon.push_back(p + kFollows * made.into.back());
  }
  return made;
}

}  // namespace

// What is left of the fitted outline.
Polygon notched(const CutInput& input, int k, const NeededPiece& needed) {
  const Box2 drawn = box_of(needed.drawn->outline);
  std::vector<Polygon> rings;
  for (const NotchFit& notch : input.fit.notches)
    if (notch.piece == k && !notch.polygon.empty()) add_to_cut_out(rings, notch, drawn);
  if (rings.empty()) return needed.fitted;
  for (Polygon& ring : rings)
    for (Vec2& p : ring) p = p - needed.closer;
  return largest(subtract(Regions{{needed.fitted, {}}}, unite(rings)));
}

void add_notches(CutPiece& cut, const CutInput& input, int k, const NeededPiece& needed) {
  for (const NotchFit& notch : input.fit.notches) {
    if (notch.piece != k || notch.polygon.empty()) continue;
    const NeededNotch* corner = corner_of(notch, needed);
    if (corner && !notch.follows_profile && is_square(notch.polygon)) {
      cut.notches.push_back({corner->corner,
                             corner->width_mm,
                             corner->height_mm,
                             {},
                             {},
                             corner->around,
                             false,
                             corner->wild_across_mm,
                             corner->wild_up_mm});
      continue;
    }
    cut.notches.push_back(outlined(notch, box_of(needed.drawn->outline)));
  }
}

}  // namespace nook
