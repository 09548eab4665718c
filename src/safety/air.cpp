// Distances to shadows, boxes first.
#include "safety/air.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace nook::safe {
namespace {

constexpr double kEndless = std::numeric_limits<double>::infinity();
constexpr double kFirstLook = 120;  // mm: a head's radius; chosen
constexpr int kInARow = 8;          // edges of a run; chosen
constexpr double kSameSpot = 1e-9;  // mm^2: a corner is equally near by both its edges

double square(const Box2& box, Vec2 p) {
  const double x = std::max({box.low.x - p.x, 0.0, p.x - box.high.x});
  const double y = std::max({box.low.y - p.y, 0.0, p.y - box.high.y});
  return x * x + y * y;
}

void turn_right(Region& region) {
  if (signed_area(region.outline) < 0) std::reverse(region.outline.begin(), region.outline.end());
  for (Polygon& hole : region.holes)
    if (signed_area(hole) > 0) std::reverse(hole.begin(), hole.end());
}

std::vector<Box2> boxes_of(const std::vector<Shadow>& shadows) {
  std::vector<Box2> boxes;
  for (const Shadow& shadow : shadows) boxes.push_back(box_of(shadow.region.outline));
  return boxes;
}

}  // namespace

/// The nearest spot so far, by its square; inside = in the shadow looked at last.
struct Air::Best {
  double square = kEndless;
  Vec2 at;
  const Edge* edge = nullptr;
  bool inside = false;
};

Vec2 Air::Edge::nearest(Vec2 p) const {
  return a + std::clamp(dot(p - a, d) * inverse, 0.0, 1.0) * d;
}

Air::Air(std::vector<Shadow> shadows) : shadows_(std::move(shadows)), bins_(boxes_of(shadows_)) {
  for (Shadow& shadow : shadows_) {
    turn_right(shadow.region);
    Rings rings{{}, {}, box_of(shadow.region.outline)};
    const auto add = [&](const Polygon& ring) {
      for (std::size_t i = 0; i < ring.size(); ++i) {
        const Vec2 d = ring[(i + 1) % ring.size()] - ring[i];
        const double length2 = dot(d, d);
        rings.edges.push_back({ring[i], d, length2 > 0 ? 1 / length2 : 0});
      }
    };
    add(shadow.region.outline);
    for (const Polygon& hole : shadow.region.holes) add(hole);
    rings.runs = runs_of(rings.edges);
    rings_.push_back(std::move(rings));
  }
}

std::vector<Air::Run> Air::runs_of(const std::vector<Edge>& edges) {
  const int count = static_cast<int>(edges.size());
  std::vector<Run> runs;
  for (int from = 0; from < count; from += kInARow) {
    Run run{from, std::min(from + kInARow, count), {edges[from].a, edges[from].a}};
    for (int i = from; i < run.to; ++i)
      for (Vec2 q : {edges[i].a, edges[i].a + edges[i].d}) {
        run.box.low = {std::min(run.box.low.x, q.x), std::min(run.box.low.y, q.y)};
        run.box.high = {std::max(run.box.high.x, q.x), std::max(run.box.high.y, q.y)};
      }
    runs.push_back(run);
  }
  return runs;
}

void Air::look(const Edge& edge, Vec2 p, Best& best) {
  const Vec2 off = p - edge.nearest(p);
  const double square = dot(off, off);
  if (square < best.square - kSameSpot ||
      (square < best.square + kSameSpot && best.edge &&
       cross(edge.d, off) * std::sqrt(edge.inverse) <
           cross(best.edge->d, off) * std::sqrt(best.edge->inverse)))
    best.square = square, best.at = p - off, best.edge = &edge;
}

// Only the edges that may be the nearest are measured, only those to the right of p at its height
// counted.
void Air::look(const Rings& rings, Vec2 p, Best& best) {
  bool odd = false;
  for (const Run& run : rings.runs) {
    if (square(run.box, p) < best.square + kSameSpot)
      for (int i = run.from; i < run.to; ++i) look(rings.edges[i], p, best);
    if (run.box.low.y > p.y || run.box.high.y < p.y || run.box.high.x < p.x) continue;
    for (int i = run.from; i < run.to; ++i) {
      const Edge& edge = rings.edges[i];
      const double to = edge.a.y + edge.d.y;
      if ((edge.a.y > p.y) != (to > p.y) && p.x < edge.a.x + (p.y - edge.a.y) * edge.d.x / edge.d.y)
        odd = !odd;
    }
  }
  best.inside = odd;
}

Touch Air::touch(const Best& best, Vec2 p) const {
  Touch found{best.inside ? 0 : std::sqrt(best.square), p, {}, {}};
  if (!best.edge) return found;
  found.at = best.at;
  found.normal = -std::sqrt(best.edge->inverse) * left_of(best.edge->d);
  return found;
}

Touch Air::nearest(Vec2 p) const {
  for (double reach = kFirstLook;; reach *= 4) {
    const Touch found = nearest_of(bins_.near(p, reach), p, kEndless);
    if (found.distance <= reach || reach > bins_.farthest(p)) return found;
  }
}

Touch Air::nearest(Vec2 p, double reach) const {
  return nearest_of(bins_.near(p, reach), p, reach);
}

Touch Air::nearest_of(const std::vector<int>& which, Vec2 p, double reach) const {
  Best best;
  best.square = reach * reach;
  int owner = -1;
  for (int i : which) {
    if (square(rings_[i].box, p) >= best.square) continue;
    const Edge* before = best.edge;
    look(rings_[i], p, best);
    if (best.edge != before) owner = i;
    if (!best.inside) continue;
    // Inside one shadow nothing else matters; its own border is asked for.
    best = {};
    look(rings_[i], p, best);
    owner = i;
    break;
  }
  Touch found = touch(best, p);
  if (owner >= 0) found.owner = shadows_[owner].owner;
  if (owner < 0) found.distance = kEndless;
  return found;
}

std::vector<Touch> Air::within(Vec2 p, double reach) const {
  std::vector<Touch> all;
  for (int i : bins_.near(p, reach)) {
    if (square(rings_[i].box, p) > reach * reach) continue;
    Best best;
    look(rings_[i], p, best);
    Touch found = touch(best, p);
    found.owner = shadows_[i].owner;
    if (found.distance > reach) continue;
    const auto same = [&](const Touch& t) { return t.owner == found.owner; };
    const auto known = std::find_if(all.begin(), all.end(), same);
    if (known == all.end())
      all.push_back(found);
    else if (found.distance < known->distance)
      *known = found;
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Touch& a, const Touch& b) { return a.distance < b.distance; });
  return all;
}

std::vector<Vec2> Air::rim(Vec2 p, double reach) const {
  std::vector<Vec2> found;
  for (int i : bins_.near(p, reach)) {
    const Rings& rings = rings_[i];
    if (square(rings.box, p) > reach * reach) continue;
    for (const Edge& edge : rings.edges) {
      const Vec2 q = edge.nearest(p);
      if (dot(p - q, p - q) <= reach * reach) found.push_back(q);
    }
  }
  return found;
}

Air Air::near(Vec2 p, double reach) const {
  std::vector<Shadow> close;
  for (int i : bins_.near(p, reach))
    if (square(rings_[i].box, p) <= reach * reach) close.push_back(shadows_[i]);
  return Air(std::move(close));
}

}  // namespace nook::safe
