// What takes an overlap away: a notch around what is in the way, wood off a side near it, a move.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "adapt/candidate.h"
#include "adapt/reshape.h"

namespace nook {
namespace {

using List = std::vector<Ladder>;

std::vector<double> sizes_for(const Workbench& bench, const ClashFit& clash) {
  const double depth = std::max(0.0, clash.depth_mm);
  return easy_sizes(depth, depth + 2.5 * clash.sd_mm + bench.rounding.step.mm, bench.rounding);
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

// The sides and faces that lie near the deepest spot: what is in the way came in there.
std::vector<Side> sides_near(const Workbench& bench, const ClashFit& clash, int piece) {
  const double near = std::max(0.0, clash.depth_mm) + 2 * bench.rounding.step.mm;
  const Piece& of = bench.answer.pieces[piece];
  const Vec3 at = bench.answer.frames[piece].piece_from_room(clash.at);
  const Box box = box_of(of.drawn->outline);
  std::vector<Side> sides;
  if (std::abs(at.x - box.low.x) < near) sides.push_back({EdgeSide::left, {1, 0, 0}});
  if (std::abs(at.x - box.high.x) < near) sides.push_back({EdgeSide::right, {-1, 0, 0}});
  if (std::abs(at.y - box.low.y) < near) sides.push_back({EdgeSide::bottom, {0, 1, 0}});
  if (std::abs(at.y - box.high.y) < near) sides.push_back({EdgeSide::top, {0, -1, 0}});
  if (std::abs(at.z) < near) sides.push_back({{}, {0, 0, 1}});
  if (std::abs(at.z - of.thickness) < near) sides.push_back({{}, {0, 0, -1}});
  return sides;
}

void add_moves(const Workbench& bench, const Flaw& flaw, int piece, List& list) {
  const ClashFit& clash = bench.answer.clashes[flaw.index];
  const Frame& f = bench.answer.pieces[piece].frame;
  for (const Side& side : sides_near(bench, clash, piece)) {
    const Vec3 way = side.away.x * f.u + side.away.y * f.v + side.away.z * f.w;
    list.push_back(group_moved(bench, flaw, piece, way, sizes_for(bench, clash)));
  }
}

void add_trims(const Workbench& bench, const Flaw& flaw, int piece, List& list) {
  const ClashFit& clash = bench.answer.clashes[flaw.index];
  std::vector<double> sizes = sizes_for(bench, clash);
  for (double& size : sizes) size = -size;
  for (const Side& side : sides_near(bench, clash, piece))
    if (side.edge) list.push_back(edge_set_out(bench, flaw, piece, *side.edge, sizes));
}

// "left wall baseboard" stands on "left wall".
bool stands_on(const std::string& what, const std::string& wall) {
  return what.size() > wall.size() && what.compare(0, wall.size(), wall) == 0 &&
         what[wall.size()] == ' ';
}

void add_notches(const Workbench& bench, const Flaw& flaw, List& list) {
  const ClashFit& clash = bench.answer.clashes[flaw.index];
  for (const ContactFit& contact : bench.answer.contacts) {
    const Contact& how = *contact.how;
    if (contact.piece != clash.piece || how.notch || how.keep) continue;
    if (!stands_on(clash.with, how.meets)) continue;
    list.push_back(
        {{{contact.part, "notch", fmt::format("{}: notch it around the {}", flaw.text, clash.with),
           fitting_words(how.by, false), fitting_words(how.by, true)},
          refit(bench.design, contact.contact, how.by, true)}});
  }
}

}  // namespace

std::vector<Ladder> clash_candidates(const Workbench& bench, const Flaw& flaw) {
  const std::vector<int> pieces = pieces_in(bench, bench.answer.clashes[flaw.index]);
  List list;
  for (const int piece : pieces) add_moves(bench, flaw, piece, list);
  for (const int piece : pieces) add_trims(bench, flaw, piece, list);
  add_notches(bench, flaw, list);
  return list;
}

}  // namespace nook
