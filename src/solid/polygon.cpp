// Shoelace area, even-odd containment, distances to segments, chords of a line.
#include "solid/polygon.h"

#include <algorithm>

namespace nook {
namespace {

constexpr double kOnBorder = 1e-6;  // mm; far under the 0.001 mm grid of outlines

template <class Do>
void each_edge(const Polygon& ring, Do act) {
  for (std::size_t i = 0; i + 1 < ring.size(); ++i) act(ring[i], ring[i + 1]);
  if (!ring.empty()) act(ring.back(), ring.front());
}

template <class Do>
void each_edge(const Region& region, Do act) {
  each_edge(region.outline, act);
  for (const Polygon& hole : region.holes) each_edge(hole, act);
}

// Where the line crosses an edge; an edge end on the line counts for the edge above it only.
template <class Do>
void each_crossing(const Polygon& ring, Vec2 p, Vec2 d, Do act) {
  if (ring.empty()) return;
  Vec2 a = ring.back();
  double side_a = cross(d, a - p);
  for (const Vec2 b : ring) {
    const double side_b = cross(d, b - p);
    if ((side_a > 0) != (side_b > 0)) {
      const double t = side_a / (side_a - side_b);
      act(dot(d, a + t * (b - a) - p));
    }
    a = b, side_a = side_b;
  }
}

template <class Do>
void each_crossing(const Region& region, Vec2 p, Vec2 d, Do act) {
  each_crossing(region.outline, p, d, act);
  for (const Polygon& hole : region.holes) each_crossing(hole, p, d, act);
}

std::vector<double> crossings(const Region& region, Vec2 p, Vec2 d) {
  std::vector<double> found;
  each_crossing(region, p, d, [&](double at) { found.push_back(at); });
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace

double signed_area(const Polygon& ring) {
  double twice = 0;
  if (ring.empty()) return 0;
  const Vec2 o = ring.front();
  each_edge(ring, [&](Vec2 a, Vec2 b) { twice += cross(a - o, b - o); });
  return twice / 2;
}

double area(const Regions& regions) {
  double total = 0;
  for (const Region& r : regions) {
    total += std::abs(signed_area(r.outline));
    for (const Polygon& hole : r.holes) total -= std::abs(signed_area(hole));
  }
  return total;
}

double segment_distance(Vec2 a, Vec2 b, Vec2 point) {
  const Vec2 d = b - a;
  const double length2 = dot(d, d);
  const double t = length2 > 0 ? std::clamp(dot(point - a, d) / length2, 0.0, 1.0) : 0;
  return norm(point - a - t * d);
}

double border_distance(const Region& region, Vec2 point) {
  double least = std::numeric_limits<double>::infinity();
  each_edge(region,
            [&](Vec2 a, Vec2 b) { least = std::min(least, segment_distance(a, b, point)); });
  return least;
}

bool contains(const Region& region, Vec2 point) {
  bool odd = false;
  each_crossing(region, point, {1, 0}, [&](double at) { odd ^= at > 0; });
  return odd || border_distance(region, point) <= kOnBorder;
}

std::vector<Stretch> inside(const Region& region, Vec2 p, Vec2 d) {
  const std::vector<double> s = crossings(region, p, d);
  std::vector<Stretch> found;
  for (std::size_t i = 0; i + 1 < s.size(); i += 2) {
    if (!found.empty() && s[i] - found.back().to <= kOnBorder)
      found.back().to = s[i + 1];
    else
      found.push_back({s[i], s[i + 1]});
  }
  return found;
}

Box2 box_of(const Polygon& ring) {
  Box2 box{ring.front(), ring.front()};
  for (Vec2 p : ring) {
    box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
    box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
  }
  return box;
}

namespace {

void start_lowest(Polygon& ring) {
  const auto lower = [](Vec2 a, Vec2 b) { return a.y < b.y || (a.y == b.y && a.x < b.x); };
  std::rotate(ring.begin(), std::min_element(ring.begin(), ring.end(), lower), ring.end());
}

bool before(const Polygon& a, const Polygon& b) {
  return a.front().x < b.front().x || (a.front().x == b.front().x && a.front().y < b.front().y);
}

}  // namespace

Regions in_order(Regions regions) {
  for (Region& region : regions) {
    start_lowest(region.outline);
    for (Polygon& hole : region.holes) start_lowest(hole);
    std::sort(region.holes.begin(), region.holes.end(), before);
  }
  std::sort(regions.begin(), regions.end(),
            [](const Region& a, const Region& b) { return before(a.outline, b.outline); });
  return regions;
}

}  // namespace nook
