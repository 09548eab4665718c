// What takes an overlap away: a notch around what is in the way, wood off a side near it, a move.
#include <algorithm>
#include <cmath>
#include <optional>

#include "adapt/candidate.h"
#include "adapt/reshape.h"
#include "fit/block.h"

namespace nook {
namespace {

using List = std::vector<Ladder>;

Sizes sizes_of(const Workbench& bench, const ClashFit& clash) {
  return sizes_for(clash.depth_mm, clash.sd_mm, bench.rounding);
}

// The two pieces of a clash; the second is missing where it is the room.
std::vector<int> pieces_in(const Workbench& bench, const ClashFit& clash) {
  std::vector<int> pieces{clash.piece};
  for (int p = 0; p < static_cast<int>(bench.answer.pieces.size()); ++p)
    if (bench.answer.pieces[p].name == clash.with) pieces.push_back(p);
  return pieces;
}

struct Box {
  Vec2 low{1e300, 1e300}, high{-1e300, -1e300};
};
Box box_of(const Polygon& outline) {
  Box box;
  for (const Vec2 p : outline) {
    box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
    box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
  }
  return box;
}

// A side of a piece and the way, in the piece's frame, that it gives when it is moved away.
struct Side {
  std::optional<EdgeSide> edge;  // none: a face
  Vec3 away;
};

std::vector<Side> sides_of(const Box& box, double thickness, Vec3 at, double near) {
  std::vector<Side> sides;
  if (std::abs(at.x - box.low.x) < near) sides.push_back({EdgeSide::left, {1, 0, 0}});
  if (std::abs(at.x - box.high.x) < near) sides.push_back({EdgeSide::right, {-1, 0, 0}});
  if (std::abs(at.y - box.low.y) < near) sides.push_back({EdgeSide::bottom, {0, 1, 0}});
  if (std::abs(at.y - box.high.y) < near) sides.push_back({EdgeSide::top, {0, -1, 0}});
  if (std::abs(at.z) < near) sides.push_back({{}, {0, 0, 1}});
  if (std::abs(at.z - thickness) < near) sides.push_back({{}, {0, 0, -1}});
  return sides;
}

// How far a piece reaches along a direction of the room, from and to.
Vec2 reach_of(const Workbench& bench, int piece, Vec3 way) {
  const Piece& of = bench.answer.pieces[piece];
  Vec2 reach{1e300, -1e300};
  for (const Vec2 p : of.drawn->outline)
    for (const double w : {0.0, of.thickness}) {
      const double at = dot(bench.answer.frames[piece].room_from_piece({p.x, p.y, w}), way);
      reach = {std::min(reach.x, at), std::max(reach.y, at)};
    }
  return reach;
}

// Where two pieces only meet in some rooms: the side that faces the other one.
std::vector<Side> side_facing(const Workbench& bench, int piece, int other) {
  const Frame& frame = bench.answer.frames[piece];
  std::vector<Side> best;
  double furthest = -1e300;
  const double all = 1e301;
  for (const Side& side : sides_of({}, 0, {}, all)) {
    const Vec3 out = -side.away.x * frame.u - side.away.y * frame.v - side.away.z * frame.w;
    const double apart = reach_of(bench, other, out).x - reach_of(bench, piece, out).y;
    if (apart > furthest) furthest = apart, best = {side};
  }
  return best;
}

// The sides and faces that lie near the deepest spot: what is in the way came in there.
std::vector<Side> sides_near(const Workbench& bench, const ClashFit& clash, int piece) {
  if (clash.depth_mm <= 0) {
    for (const int other : pieces_in(bench, clash))
      if (other != piece) return side_facing(bench, piece, other);
    return {};
  }
  const Piece& of = bench.answer.pieces[piece];
  const Frame& frame = bench.answer.frames[piece];
  std::vector<Side> sides =
      sides_of(box_of(of.drawn->outline), of.thickness, frame.piece_from_room(clash.at),
               clash.depth_mm + 2 * bench.rounding.step.mm);
  // Nothing gets clear of a wall upward or downward.
  if (!wall_named(clash.with).empty())
    std::erase_if(sides, [&](const Side& side) {
      const double up = side.away.x * frame.u.z + side.away.y * frame.v.z + side.away.z * frame.w.z;
      return std::abs(up) > 0.9;
    });
  return sides;
}

void add_moves(const Workbench& bench, const Flaw& flaw, int piece, List& list) {
  const ClashFit& clash = bench.answer.clashes[flaw.index];
  const Frame& f = bench.answer.pieces[piece].frame;
  for (const Side& side : sides_near(bench, clash, piece)) {
    const Vec3 way = side.away.x * f.u + side.away.y * f.v + side.away.z * f.w;
    list.push_back(group_moved(bench, flaw, piece, way, sizes_of(bench, clash)));
  }
}

void add_trims(const Workbench& bench, const Flaw& flaw, int piece, List& list) {
  const ClashFit& clash = bench.answer.clashes[flaw.index];
  const Sizes sizes = inward(sizes_of(bench, clash));
  for (const Side& side : sides_near(bench, clash, piece))
    if (side.edge) list.push_back(edge_set_out(bench, flaw, piece, *side.edge, sizes));
}

void add_notches(const Workbench& bench, const Flaw& flaw, List& list) {
  const ClashFit& clash = bench.answer.clashes[flaw.index];
  for (const ContactFit& contact : bench.answer.contacts) {
    const Contact& how = *contact.how;
    if (contact.piece != clash.piece || how.notch || how.keep) continue;
    if (clash.with == how.meets || !is_on(clash.with, how.meets)) continue;
    list.push_back({Work::notch,
                    {{contact.part,
                      "notch",
                      flaw.text,
                      "notch it around the " + clash.with,
                      {ContactRefitted{contact.contact, how.by, true}}}}});
  }
}

// Pieces that only meet in some rooms do so because a contact of theirs has too little place there:
// what settles that one settles this.
bool has_open_contact(const Workbench& bench, const std::vector<int>& pieces) {
  return std::any_of(
      bench.answer.contacts.begin(), bench.answer.contacts.end(), [&](const ContactFit& contact) {
        return contact.verdict != Verdict::fits &&
               std::find(pieces.begin(), pieces.end(), contact.piece) != pieces.end();
      });
}

}  // namespace

std::vector<Ladder> clash_candidates(const Workbench& bench, const Flaw& flaw) {
  const ClashFit& clash = bench.answer.clashes[flaw.index];
  const std::vector<int> pieces = pieces_in(bench, clash);
  List list;
  if (clash.depth_mm <= 0 && has_open_contact(bench, pieces)) return list;
  for (const int piece : pieces) add_moves(bench, flaw, piece, list);
  for (const int piece : pieces) add_trims(bench, flaw, piece, list);
  add_notches(bench, flaw, list);
  return list;
}

}  // namespace nook
