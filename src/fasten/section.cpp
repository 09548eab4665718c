// Sections of prisms: a face-on cut is the outline, an edge-on cut a row of rectangles.
#include "fasten/section.h"

#include <algorithm>
#include <cmath>

#include "solid/boolean.h"

namespace nook {
namespace {

const double kSkew = direction(degrees(.5)).sin;  // chosen: what a shop calls square

Regions mapped(const Regions& body, const Frame& frame, double w, const CutPlane& plane) {
  const auto ring = [&](const Polygon& from) {
    Polygon to;
    for (Vec2 p : from) to.push_back(plane.plane_from_room(frame.room_from_piece({p.x, p.y, w})));
    return to;
  };
  Regions out;
  for (const Region& r : body) {
    Region region{ring(r.outline), {}};
    for (const Polygon& hole : r.holes) region.holes.push_back(ring(hole));
    out.push_back(std::move(region));
  }
  return out;
}

// The line that the plane makes in the piece's u, v: a point and a unit direction.
struct Cut {
  Vec2 p, d;
};
Cut cut_of(const Frame& frame, const CutPlane& plane) {
  const Vec2 n{dot(plane.normal, frame.u), dot(plane.normal, frame.v)};
  const double length = norm(n);
  const Vec2 unit = (1 / length) * n;
  return {(dot(plane.at - frame.at, plane.normal) / length) * unit, left_of(unit)};
}

bool apart(const std::vector<Polygon>& rings) {
  std::vector<Box2> boxes;
  for (const Polygon& ring : rings) boxes.push_back(box_of(ring));
  for (std::size_t i = 0; i < boxes.size(); ++i)
    for (std::size_t j = i + 1; j < boxes.size(); ++j) {
      const Box2 &a = boxes[i], &b = boxes[j];
      if (a.low.x <= b.high.x && b.low.x <= a.high.x && a.low.y <= b.high.y && b.low.y <= a.high.y)
        return false;
    }
  return true;
}

}  // namespace

Regions wood_of(const Piece& piece) {
  std::vector<Polygon> cutouts;
  for (const Cutout& c : piece.drawn->cutouts) cutouts.push_back(c.outline);
  // Cutouts lie inside the outline; those that lie apart are its holes as they stand.
  if (apart(cutouts)) return {{piece.drawn->outline, cutouts}};
  return subtract({{piece.drawn->outline, {}}}, unite(cutouts));
}

Regions section_of(const Piece& piece, const Frame& frame, const CutPlane& plane) {
  const double facing = std::abs(dot(plane.normal, frame.w));
  if (facing > std::sqrt(1 - kSkew * kSkew)) {
    const double w = dot(plane.at - frame.at, frame.w);
    if (w < 0 || w > piece.thickness) return {};
    return mapped(wood_of(piece), frame, w, plane);
  }
  if (facing > kSkew) return {};
  const Cut cut = cut_of(frame, plane);
  Regions found;
  for (const Region& region : wood_of(piece))
    for (const Stretch& s : inside(region, cut.p, cut.d)) {
      const Vec2 a = cut.p + s.from * cut.d, b = cut.p + s.to * cut.d;
      Polygon ring;
      for (const Vec3 p : {Vec3{a.x, a.y, 0}, Vec3{b.x, b.y, 0}, Vec3{b.x, b.y, piece.thickness},
                           Vec3{a.x, a.y, piece.thickness}})
        ring.push_back(plane.plane_from_room(frame.room_from_piece(p)));
      found.push_back({std::move(ring), {}});
    }
  return found;
}

double wood_ahead(const Piece& piece, const Frame& frame, Vec3 p, Vec3 d) {
  const Vec3 at = frame.piece_from_room(p);
  const double rise = dot(d, frame.w);
  if (std::abs(rise) > std::sqrt(.5))
    return (rise > 0 ? piece.thickness - at.z : at.z) / std::abs(rise);
  const Vec2 flat{dot(d, frame.u), dot(d, frame.v)};
  const double length = norm(flat);
  for (const Region& region : wood_of(piece))
    for (const Stretch& s : inside(region, {at.x, at.y}, (1 / length) * flat))
      if (s.from <= 1 && s.to > 0) return s.to / length;
  return 0;
}

Stretch reach_along(const Piece& piece, const Frame& frame, Vec3 at, Vec3 normal) {
  Stretch reach{1e300, -1e300};
  for (Vec2 p : piece.drawn->outline)
    for (double w : {0.0, piece.thickness}) {
      const double s = dot(frame.room_from_piece({p.x, p.y, w}) - at, normal);
      reach = {std::min(reach.from, s), std::max(reach.to, s)};
    }
  return reach;
}

}  // namespace nook
