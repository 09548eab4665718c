// Finds where outlines cross, by a sweep from left to right.
#include "job/outline.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace nook {
namespace {

struct Edge {
  Vec2 a, b;
  int ring, number, ring_size;

  double left() const { return std::min(a.x, b.x); }
  double right() const { return std::max(a.x, b.x); }
  double low() const { return std::min(a.y, b.y); }
  double high() const { return std::max(a.y, b.y); }
};

double distance(Vec2 p, const Edge& e) {
  const Vec2 d = e.b - e.a;
  const double length2 = dot(d, d);
  const double t = length2 > 0 ? std::clamp(dot(p - e.a, d) / length2, 0.0, 1.0) : 0;
  return norm(p - (e.a + t * d));
}

bool crosses(const Edge& e, const Edge& f) {
  const Vec2 d = e.b - e.a, g = f.b - f.a;
  const bool f_spans = (cross(d, f.a - e.a) > 0) != (cross(d, f.b - e.a) > 0);
  const bool e_spans = (cross(g, e.a - f.a) > 0) != (cross(g, e.b - f.a) > 0);
  return f_spans && e_spans;
}

bool touches(const Edge& e, const Edge& f) {
  return crosses(e, f) || distance(e.a, f) < kSamePlaceMm || distance(e.b, f) < kSamePlaceMm ||
         distance(f.a, e) < kSamePlaceMm || distance(f.b, e) < kSamePlaceMm;
}

// Neighbors share a point; they meet where one doubles back over the other.
bool doubles_back(const Edge& e, const Edge& next) {
  return distance(next.b, e) < kSamePlaceMm || distance(e.a, next) < kSamePlaceMm;
}

bool meet(const Edge& e, const Edge& f) {
  if (e.ring != f.ring) return touches(e, f);
  const bool e_first = (e.number + 1) % e.ring_size == f.number;
  const bool f_first = (f.number + 1) % e.ring_size == e.number;
  if (e_first) return doubles_back(e, f);
  return f_first ? doubles_back(f, e) : touches(e, f);
}

EdgeMeeting ordered(const Edge& e, const Edge& f) {
  const EdgeMeeting one{e.ring, e.number, f.ring, f.number},
      other{f.ring, f.number, e.ring, e.number};
  return std::min(one, other);
}

std::vector<Edge> edges_of(const std::vector<Polygon>& rings) {
  std::vector<Edge> edges;
  double wide = 0, high = 0;
  for (std::size_t r = 0; r < rings.size(); ++r) {
    const int size = static_cast<int>(rings[r].size());
    for (int n = 0; n < size; ++n) {
      edges.push_back({rings[r][n], rings[r][(n + 1) % size], static_cast<int>(r), n, size});
      wide += edges.back().right() - edges.back().left();
      high += edges.back().high() - edges.back().low();
    }
  }
  // The sweep goes from left to right; edges that lie along it stay open long, so they are stood
  // up.
  if (wide > high)
    for (Edge& e : edges) std::swap(e.a.x, e.a.y), std::swap(e.b.x, e.b.y);
  std::stable_sort(edges.begin(), edges.end(),
                   [](const Edge& e, const Edge& f) { return e.left() < f.left(); });
  return edges;
}

}  // namespace

std::optional<EdgeMeeting> first_meeting(const std::vector<Polygon>& rings) {
  std::vector<const Edge*> open;  // edges that the sweep line still crosses
  const std::vector<Edge> edges = edges_of(rings);
  for (const Edge& edge : edges) {
    std::erase_if(open, [&](const Edge* e) { return e->right() < edge.left() - kSamePlaceMm; });
    for (const Edge* e : open) {
      const bool apart =
          e->low() > edge.high() + kSamePlaceMm || e->high() < edge.low() - kSamePlaceMm;
      if (!apart && meet(*e, edge)) return ordered(*e, edge);
    }
    open.push_back(&edge);
  }
  return std::nullopt;
}

double ring_area(const Polygon& ring) {
  double twice = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2 a = ring[i] - ring[0], b = ring[(i + 1) % ring.size()] - ring[0];
    twice += cross(a, b);
  }
  return twice / 2;
}

bool is_inside(const Polygon& ring, Vec2 point) {
  bool inside = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
    const Vec2 a = ring[j], b = ring[i];
    if ((a.y > point.y) == (b.y > point.y)) continue;
    if (point.x < a.x + (point.y - a.y) / (b.y - a.y) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}

Polygon circle(Vec2 centre, double diameter) {
  constexpr double kChordErrorMm = 0.01;  // chosen
  const double r = diameter / 2;
  // The middle of a chord over the angle 2 a stands r (1 - cos a) inside the arc.
  const double half_angle = r > kChordErrorMm ? std::acos(1 - kChordErrorMm / r) : 1;
  const int quarter = std::max(4, static_cast<int>(std::ceil(std::numbers::pi / half_angle / 4)));
  // The first quarter, mirrored within itself at 45 degrees, then turned three times.
  Polygon first(quarter);
  for (int k = 0; 2 * k <= quarter; ++k) {
    const double a = std::numbers::pi / 2 * k / quarter;
    const bool middle = 2 * k == quarter;
    const double x = r * (middle ? std::numbers::sqrt2 / 2 : std::cos(a));
    const double y = middle ? x : r * std::sin(a);
    first[k] = {x, y};
    if (k > 0) first[quarter - k] = {y, x};
  }
  Polygon points;
  for (int turn = 0; turn < 4; ++turn)
    for (Vec2& p : first) {
      points.push_back(centre + p);
      p = left_of(p);
    }
  return points;
}

}  // namespace nook
