// Rays against a prism: the slab of its thickness and the chords of its outline.
#include "fit/body.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "solid/boolean.h"
#include "solid/cells.h"

namespace nook {
namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();
constexpr double kSliver = 0.01;  // mm; a ray that runs along a face may touch it. Chosen
constexpr double kLevel = 1e-9;   // a ray this level runs along the faces

struct Span {
  double from = -kInfinite, to = kInfinite;
  Vec3 normal;  // of the way in
};

// Within the thickness; faces are a sliver apart from what lies exactly in them.
std::optional<Span> through_faces(const Body& body, Vec3 from, Vec3 way) {
  if (std::abs(way.z) < kLevel) {
    if (from.z < -kSliver || from.z > body.thickness + kSliver) return std::nullopt;
    return Span{};
  }
  const double back = -from.z / way.z, front = (body.thickness - from.z) / way.z;
  if (way.z > 0) return Span{back, front, {0, 0, -1}};
  return Span{front, back, {0, 0, 1}};
}

// The outward normal of the border where the chord comes in.
Vec3 border_normal(const Region& region, Vec2 p, Vec2 d) {
  double nearest = kInfinite;
  Vec3 normal{-d.x, -d.y, 0};
  const auto look = [&](const Polygon& ring, double side) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Vec2 a = ring[i], b = ring[(i + 1) % ring.size()];
      const Vec2 n = (-side / std::max(norm(b - a), 1e-12)) * left_of(b - a);
      const double distance = segment_distance(a, b, p);
      if (dot(n, d) >= 0 || distance >= nearest - 1e-9) continue;
      nearest = distance;
      normal = {n.x, n.y, 0};
    }
  };
  look(region.outline, signed_area(region.outline) > 0 ? 1 : -1);
  for (const Polygon& hole : region.holes) look(hole, signed_area(hole) > 0 ? -1 : 1);
  return normal;
}

// A ray square to the faces stays over one point of the outline.
bool over(const Body& body, Vec2 p) {
  return contains(body.region, p) || border_distance(body.region, p) < kSliver;
}

std::vector<Span> through_outline(const Body& body, Vec3 from, Vec3 way) {
  const double flat = std::hypot(way.x, way.y);
  const Vec2 p{from.x, from.y};
  if (flat < kLevel) return over(body, p) ? std::vector<Span>{Span{}} : std::vector<Span>{};
  const Vec2 d{way.x / flat, way.y / flat};
  std::vector<Stretch> chords = inside(body.region, p, d);
  // A ray exactly along the border: look a sliver to each side of it.
  for (double side : {kSliver, -kSliver})
    if (chords.empty()) chords = inside(body.region, p + side * left_of(d), d);
  std::vector<Span> spans;
  for (Stretch s : chords) {
    const Vec2 in = p + s.from * d;
    spans.push_back({s.from / flat, s.to / flat, border_normal(body.region, in, d)});
  }
  return spans;
}

}  // namespace

Body body_of(const Piece& piece) {
  Body body;
  body.region.outline = piece.drawn->outline;
  for (const Cutout& cutout : piece.drawn->cutouts) body.region.holes.push_back(cutout.outline);
  body.cells = convex_cells(body.region);
  body.thickness = piece.thickness;
  return body;
}

Body body_less(const Body& body, const Regions& cut) {
  Body less{body.region, {}, body.thickness};
  const Regions left = subtract(Regions{body.region}, cut);
  for (const Region& region : left) {
    const std::vector<Polygon> cells = convex_cells(region);
    less.cells.insert(less.cells.end(), cells.begin(), cells.end());
  }
  return less;
}

std::optional<BodyHit> first_hit(const Body& body, Vec3 from, Vec3 way, double behind) {
  const std::optional<Span> faces = through_faces(body, from, way);
  if (!faces) return std::nullopt;
  std::optional<BodyHit> nearest_behind;
  for (const Span& chord : through_outline(body, from, way)) {
    const Span& in = chord.from > faces->from ? chord : *faces;
    const double to = std::min(chord.to, faces->to);
    if (in.from > to || !std::isfinite(in.from)) continue;
    if (to > kSliver || in.from >= -kSliver) return BodyHit{in.from, in.normal};
    if (to >= -behind) nearest_behind = BodyHit{in.from, in.normal};
  }
  return nearest_behind;
}

}  // namespace nook
