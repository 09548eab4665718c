// Where two placed pieces lie on each other.
#include "fasten/joint.h"

#include <algorithm>
#include <cmath>

#include "solid/boolean.h"

namespace nook {
namespace {

// Chosen: pieces this far apart, as placed, still meet; planes just inside the other piece.
constexpr double kLooks[] = {.5, 2.5, 5};
constexpr double kLeastOverlap = 100;  // mm^2
constexpr double kPocketReach = 64;  // mm from the end to the far rim of a pocket, 2 1/2 in. Chosen

CutPlane face_plane(const Placed& part, bool back, double off) {
  const Vec3 n = back ? -part.frame.w : part.frame.w;
  const Vec3 at = part.frame.room_from_piece({0, 0, back ? 0 : part.piece.thickness});
  return {at + off * n, part.frame.u, part.frame.v, n};
}

// Exact Booleans only where the boxes meet.
Regions overlap_of(const Regions& a, const Regions& b) {
  for (const Region& x : a)
    for (const Region& y : b) {
      const Box2 p = box_of(x.outline), q = box_of(y.outline);
      if (p.low.x < q.high.x && q.low.x < p.high.x && p.low.y < q.high.y && q.low.y < p.high.y)
        return intersect(a, b);
    }
  return {};
}

// Air between the two where `plane` stands `off` beyond the first.
double gap_before(const Placed& to, const CutPlane& plane, double off) {
  return std::clamp(reach_along(to.piece, to.frame, plane.at, plane.normal).from + off, 0.0, off);
}

std::optional<Meeting> through(const Placed& part, const Placed& to, bool back) {
  for (double off : kLooks) {
    Meeting m;
    m.back = back;
    m.plane = face_plane(part, back, off);
    m.overlap = overlap_of(wood_of(part.piece), section_of(to.piece, to.frame, m.plane));
    m.gap = gap_before(to, m.plane, off);
    m.inside = off - m.gap;
    if (area(m.overlap) >= kLeastOverlap) return m;
  }
  return std::nullopt;
}

std::optional<Meeting> past_edge(const Placed& part, const Placed& to, int edge) {
  const Polygon& outline = part.piece.drawn->outline;
  const Vec2 a = outline[edge], b = outline[(edge + 1) % outline.size()];
  const double length = norm(b - a), thick = part.piece.thickness;
  const Vec2 d = (1 / length) * (b - a), n = -left_of(d);
  const auto direction_of = [&](Vec2 p) { return p.x * part.frame.u + p.y * part.frame.v; };
  if (length * thick < kLeastOverlap) return std::nullopt;
  const Regions end{{{{0, 0}, {length, 0}, {length, thick}, {0, thick}}, {}}};
  for (double off : kLooks) {
    Meeting m;
    m.by_edge = true;
    m.edge = edge;
    m.plane = {part.frame.room_from_piece({a.x, a.y, 0}) + off * direction_of(n), direction_of(d),
               part.frame.w, direction_of(n)};
    const Regions cut = section_of(to.piece, to.frame, m.plane);
    if (cut.empty()) continue;
    m.overlap = overlap_of(end, cut);
    m.gap = gap_before(to, m.plane, off);
    m.inside = off - m.gap;
    if (area(m.overlap) >= kLeastOverlap) return m;
  }
  return std::nullopt;
}

// The band of a piece inward of one edge that its pockets take up.
Polygon pocket_band(const Polygon& outline, int edge) {
  const Vec2 a = outline[edge], b = outline[(edge + 1) % outline.size()];
  const Vec2 in = (kPocketReach / norm(b - a)) * left_of(b - a);
  return {a, b, b + in, a + in};
}

}  // namespace

std::optional<Meeting> face_meeting(const Placed& part, const Placed& to,
                                    std::optional<PieceFace> asked) {
  if (asked) return through(part, to, *asked == PieceFace::back);
  auto back = through(part, to, true), front = through(part, to, false);
  if (!back || !front) return back ? back : front;
  return area(back->overlap) >= area(front->overlap) ? back : front;
}

std::optional<double> air_between(const Placed& part, const Placed& to) {
  constexpr double kNear = 50;
  for (bool back : {true, false}) {
    const CutPlane face = face_plane(part, back, 0);
    const double air = reach_along(to.piece, to.frame, face.at, face.normal).from;
    if (air <= 0 || air > kNear) continue;
    const CutPlane inside = face_plane(part, back, air + kLooks[0]);
    const Regions overlap = overlap_of(wood_of(part.piece), section_of(to.piece, to.frame, inside));
    if (area(overlap) >= kLeastOverlap) return air;
  }
  return std::nullopt;
}

std::optional<Meeting> edge_meeting(const Placed& part, const Placed& to) {
  std::optional<Meeting> best;
  const int count = static_cast<int>(part.piece.drawn->outline.size());
  for (int edge = 0; edge < count; ++edge) {
    auto next = past_edge(part, to, edge);
    if (next && (!best || area(next->overlap) > area(best->overlap))) best = std::move(next);
  }
  return best;
}

Regions taken_up(const PlacedPieces& pieces, int piece, PieceFace against) {
  const Placed part = pieces.at(piece);
  const CutPlane entry = face_plane(part, against != PieceFace::back, kLooks[0]);
  std::vector<Polygon> taken;
  for (int i = 0; i < static_cast<int>(pieces.pieces.size()); ++i) {
    if (i == piece) continue;
    for (const Region& r : section_of(pieces.pieces[i], pieces.frames[i], entry))
      taken.push_back(r.outline);
  }
  for (const Fastening& f : pieces.design.fastenings) {
    if (f.screw.kind != ScrewKind::pocket || !wall_named(f.to).empty()) continue;
    const auto own = pieces.named(f.part);
    if (std::find(own.begin(), own.end(), piece) == own.end()) continue;
    for (int other : pieces.named(f.to))
      if (const auto m = edge_meeting(part, pieces.at(other)))
        taken.push_back(pocket_band(part.piece.drawn->outline, m->edge));
  }
  return taken.empty() ? Regions{} : unite(taken);
}

}  // namespace nook
