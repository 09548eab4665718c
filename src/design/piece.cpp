// Repeats written out and sides of an outline found.
#include "design/piece.h"

#include <algorithm>

#include "base/invariant.h"

namespace nook {
namespace {

// How far a point lies to the side: the outermost stretch has the greatest value.
double outward(Vec2 p, EdgeSide side) {
  switch (side) {
    case EdgeSide::left:
      return -p.x;
    case EdgeSide::right:
      return p.x;
    case EdgeSide::bottom:
      return -p.y;
    case EdgeSide::top:
      return p.y;
  }
  return 0;
}

Vec3 turned(Vec3 a, Vec3 b, Direction by) {
  return by.cos * a + by.sin * b;
}

}  // namespace

Frame frame_of(const Placement& placement) {
  const Vec3 w = cross(placement.u, placement.v);
  const Direction turn = direction(placement.turn), lean = direction(placement.lean);
  const Vec3 u = turned(placement.u, placement.v, turn);
  const Vec3 v = turned(placement.v, -placement.u, turn);
  return {placement.at, u, turned(v, w, lean), turned(w, -v, lean)};
}

std::vector<Piece> pieces_of(const Design& design) {
  std::vector<Piece> pieces;
  for (int p = 0; p < static_cast<int>(design.parts.size()); ++p) {
    const Part& part = design.parts[p];
    const int count = part.repeat ? part.repeat->count : 1;
    for (int copy = 1; copy <= count; ++copy) {
      Piece piece{part.name,
                  p,
                  part.repeat ? copy : 0,
                  frame_of(part.place_in_room),
                  design.stock[part.stock].thickness.mm,
                  design.stock[part.stock].kind == StockKind::lumber,
                  &part};
      if (part.repeat) {
        piece.name += " " + std::to_string(copy);
        piece.frame.at = piece.frame.at + (copy - 1.0) * part.repeat->step;
      }
      pieces.push_back(std::move(piece));
    }
  }
  return pieces;
}

bool is_named(const Piece& piece, const std::string& name) {
  return piece.name == name || piece.drawn->name == name;
}

std::vector<int> pieces_named(const std::vector<Piece>& pieces, const Design& design,
                              const std::string& name) {
  std::vector<int> found;
  for (int i = 0; i < static_cast<int>(pieces.size()); ++i)
    if (pieces[i].name == name || design.parts[pieces[i].part].name == name) found.push_back(i);
  return found;
}

std::string group_of(const Piece& piece) {
  const Part& part = *piece.drawn;
  return part.group == part.name ? piece.name : part.group;
}

double lowest(const Piece& piece, const Frame& frame) {
  double least = 1e300;
  for (Vec2 p : piece.drawn->outline)
    for (double w : {0.0, piece.thickness})
      least = std::min(least, frame.room_from_piece({p.x, p.y, w}).z);
  return least;
}

EdgeRun side_of(const Polygon& outline, EdgeSide side) {
  const int n = static_cast<int>(outline.size());
  require(n >= 3, "an outline has three points");
  const auto middle = [&](int e) { return 0.5 * (outline[e] + outline[(e + 1) % n]); };
  // On an anticlockwise outline the outward normal of an edge is its direction turned clockwise.
  const auto facing = [&](int e) {
    const Vec2 d = outline[(e + 1) % n] - outline[e];
    return outward(-left_of(d), side) / norm(d);
  };
  const auto faces = [&](int e) { return facing(e) > 0.5; };
  int best = -1;
  for (int e = 0; e < n; ++e)
    if (faces(e) && (best < 0 || outward(middle(e), side) > outward(middle(best), side))) best = e;
  if (best < 0) {  // a flat wedge: what faces that way most
    best = 0;
    for (int e = 1; e < n; ++e)
      if (facing(e) > facing(best)) best = e;
  }
  int first = best, last = best;
  const auto collinear = [&](int e) {
    const Vec2 d = outline[(e + 1) % n] - outline[e];
    const Vec2 b = outline[(best + 1) % n] - outline[best];
    return std::abs(cross(d, b)) < 1e-9 * norm(d) * norm(b) && faces(e);
  };
  for (int k = 1; k < n && collinear((best + k) % n); ++k) last = best + k;
  for (int k = 1; k < n && collinear((best - k + n) % n); ++k) first = best - k;
  return {(first + n) % n, last % n};
}

}  // namespace nook
