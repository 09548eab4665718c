// Blank, checks, cutouts and screw holes of one piece; its edges and notches stand by themselves.
#include "shop/cut_piece.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "shop/cut_edges.h"
#include "shop/cut_notches.h"
#include "shop/cut_slants.h"
#include "shop/wild.h"
#include "solid/simplified.h"

namespace nook {
namespace {

constexpr double kInLine = 1;    // mm that a point may stand off the line of its neighbors. Chosen
constexpr double kInset = 50.8;  // mm from an end at which a check is taken: 2 in. Chosen

CutSize size_of(const Polygon& outline) {
  const Box2 b = box_of(outline);
  return {b.high.x - b.low.x, b.high.y - b.low.y};
}

// Where from left to right a blank of four corners at most has a bottom under its top; all of it
// where it has no such stretch, or more corners.
Chord flat_stretch(const Polygon& blank) {
  const Box2 b = box_of(blank);
  Chord flat{b.low.x, b.high.x};
  if (simplified(blank, kInLine).size() > 4) return flat;
  Chord under{b.high.x, b.low.x}, over = under;
  for (size_t i = 0; i < blank.size(); ++i) {
    const Vec2 from = blank[i], to = blank[(i + 1) % blank.size()];
    if (std::abs(to.x - from.x) <= std::abs(to.y - from.y)) continue;
    Chord& side = to.x > from.x ? under : over;
    side = {std::min({side.from, from.x, to.x}), std::max({side.to, from.x, to.x})};
  }
  const Chord both{std::max(under.from, over.from), std::min(under.to, over.to)};
  return both.length() > kInset ? both : flat;
}

// Two places on a stretch, near the ends of the whole way if they are on it, else near its own.
std::array<double, 2> near_ends(Chord stretch, Chord whole) {
  const auto inset = [](Chord way) { return std::min(kInset, way.length() / 4); };
  const double low = whole.from + inset(whole), high = whole.to - inset(whole);
  return {(low >= stretch.from ? low : stretch.from + inset(stretch)) - whole.from,
          (high <= stretch.to ? high : stretch.to - inset(stretch)) - whole.from};
}

CutChecks checks_of(const Polygon& blank) {
  const Box2 b = box_of(blank);
  CutChecks checks;
  Polygon turned = on_its_side(blank);
  std::reverse(turned.begin(), turned.end());
  for (const double at : near_ends(flat_stretch(turned), {b.low.y, b.high.y}))
    checks.widths.push_back({at, chord_level(blank, b.low.y + at).length()});
  for (const double at : near_ends(flat_stretch(blank), {b.low.x, b.high.x}))
    checks.heights.push_back({at, chord_upright(blank, b.low.x + at).length()});
  const auto at = [&](PieceCorner corner) { return blank[vertex_at(blank, corner)]; };
  const Vec2 ll = at(lower_left), ur = at(upper_right), lr = at(lower_right), ul = at(upper_left);
  checks.diagonals = {norm(ur - ll), norm(ul - lr)};
  checks.diagonal_ends = {{ll - b.low, ur - b.low}, {lr - b.low, ul - b.low}};
  return checks;
}

// Distances from the sides of the blank that things are laid off from.
struct Layoff {
  const Polygon& blank;
  LaidFrom from;

  double across(double u, double v) const {
    const Chord chord = chord_level(blank, v);
    return from.across == EdgeSide::left ? u - chord.from : chord.to - u;
  }
  double up(double u, double v) const {
    const Chord chord = chord_upright(blank, u);
    return from.up == EdgeSide::bottom ? v - chord.from : chord.to - v;
  }
};

CutHole hole_of(const Cutout& cutout, const Layoff& layoff) {
  const Box2 b = box_of(cutout.outline);
  CutHole hole{cutout.name, layoff.from.across, layoff.from.up,     0,
               0,           std::nullopt,       b.high.x - b.low.x, b.high.y - b.low.y};
  Vec2 point{layoff.from.across == EdgeSide::left ? b.low.x : b.high.x,
             layoff.from.up == EdgeSide::bottom ? b.low.y : b.high.y};
  if (cutout.diameter && cutout.centre) {
    point = *cutout.centre;
    hole.diameter_mm = cutout.diameter->mm;
  }
  hole.from_across_mm = layoff.across(point.x, point.y);
  hole.from_up_mm = layoff.up(point.x, point.y);
  return hole;
}

void add_pilot(CutPiece& cut, const Hole& drilled) {
  const Hole hole = cut.stick ? in_a_stick(drilled) : drilled;
  cut.pilots.push_back({hole.id,
                        hole.into,
                        hole.end,
                        hole.edge,
                        hole.from_end_mm,
                        hole.from_edge_mm,
                        hole.clearance_mm,
                        hole.probe_first,
                        {}});
}

void add_pilots(CutPiece& cut, const DrillAnswer& drill, const std::string& piece) {
  for (const WallDrill& wall : drill.walls)
    for (const Hole& hole : wall.holes)
      if (hole.part == piece) add_pilot(cut, hole);
  for (const JointDrill& joint : drill.parts)
    for (const Hole& hole : joint.holes)
      if (joint.part == piece) add_pilot(cut, hole);
}

// A clearance at one of its sides, or something beside both: rounded up it would not go in.
bool exact(const NeededPiece& needed, EdgeSide a, EdgeSide b) {
  const SideAllowance &one = needed.sides[static_cast<size_t>(a)],
                      &other = needed.sides[static_cast<size_t>(b)];
  return one.exact || other.exact || (one.met && other.met);
}

}  // namespace

Polygon blank_outline(const CutInput& input, int piece, const NeededPiece& needed) {
  Polygon outline = needed.outline;
  const bool same_edges = outline.size() == needed.drawn->outline.size();
  for (const WildEdge& edge : wild_edges(input.fit.pieces[piece], input.design, input.fit)) {
    const EdgeChoice& choice = input.design.contacts[edge.contact].edge;
    // An edge that a shop scribe cut in pieces has new numbers: only sides are found again.
    if (same_edges || std::holds_alternative<EdgeSide>(choice))
      outline = moved(outline, *run_of(outline, choice), {edge.beyond_mm, edge.beyond_mm});
  }
  return outline;
}

CutPiece cut_piece(const CutInput& input, int k, const NeededPiece& needed) {
  CutPiece cut;
  cut.part = needed.part;
  cut.names = {needed.part};
  cut.stock = needed.stock->name;
  cut.thickness_mm = needed.thickness;
  cut.stick = needed.stock->kind == StockKind::lumber;
  const Polygon blank = blank_outline(input, k, needed);
  cut.blank = size_of(blank);
  cut.finished = size_of(needed.fitted);
  cut.exact_across = exact(needed, EdgeSide::left, EdgeSide::right);
  cut.exact_up = exact(needed, EdgeSide::bottom, EdgeSide::top);
  cut.checks = checks_of(blank);
  cut.corner = box_of(blank).low;
  add_slants(cut, input, needed, blank);
  cut.outline = notched(input, k, needed);
  add_notches(cut, input, k, needed);
  add_edges(cut, input, k, needed);
  for (const Cutout& cutout : needed.drawn->cutouts)
    cut.holes.push_back(hole_of(cutout, {blank, laid_from(needed)}));
  if (input.drill) add_pilots(cut, *input.drill, needed.part);
  return cut;
}

}  // namespace nook
