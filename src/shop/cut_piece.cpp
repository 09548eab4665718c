// Blank, checks, cutouts and screw holes of one piece; its edges and notches stand by themselves.
#include "shop/cut_piece.h"

#include <algorithm>
#include <cmath>

#include "shop/cut_edges.h"
#include "shop/cut_notches.h"
#include "shop/wild.h"
#include "solid/simplified.h"

namespace nook {
namespace {

constexpr double kInLine = 1;    // mm that a point may stand off the line of its neighbors. Chosen
constexpr double kInset = 50.8;  // mm from an end at which a check is taken: 2 in. Chosen

CutSize size_of(const Polygon& outline) {
  const Bounds b = bounds_of(outline);
  return {b.high.x - b.low.x, b.high.y - b.low.y};
}

Vec2 nearest_vertex(const Polygon& outline, Vec2 to) {
  return *std::min_element(outline.begin(), outline.end(),
                           [&](Vec2 a, Vec2 b) { return norm(a - to) < norm(b - to); });
}

double inset(double size) {
  return std::min(kInset, size / 4);
}

CutChecks checks_of(const Polygon& blank) {
  const Bounds b = bounds_of(blank);
  const CutSize size = size_of(blank);
  CutChecks checks;
  for (const double at : {inset(size.height), size.height - inset(size.height)})
    checks.widths.push_back({at, chord_level(blank, b.low.y + at).length()});
  for (const double at : {inset(size.width), size.width - inset(size.width)})
    checks.heights.push_back({at, chord_upright(blank, b.low.x + at).length()});
  const Vec2 ll = nearest_vertex(blank, b.low), ur = nearest_vertex(blank, b.high);
  const Vec2 lr = nearest_vertex(blank, {b.high.x, b.low.y});
  const Vec2 ul = nearest_vertex(blank, {b.low.x, b.high.y});
  checks.diagonals = {norm(ur - ll), norm(ul - lr)};
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
  const Bounds b = bounds_of(cutout.outline);
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

void add_pilot(CutPiece& cut, const Hole& hole) {
  cut.pilots.push_back({hole.id,
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

// More than four corners once points in line are left out.
bool is_shaped(const Polygon& outline) {
  return simplified(outline, kInLine).size() > 4;
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
  if (is_shaped(needed.outline)) cut.contour = simplified(needed.outline, kInLine);
  cut.outline = notched(input, k, needed);
  add_notches(cut, input, k, needed);
  add_edges(cut, input, k, needed);
  for (const Cutout& cutout : needed.drawn->cutouts)
    cut.holes.push_back(hole_of(cutout, {blank, laid_from(needed)}));
  if (input.drill) add_pilots(cut, *input.drill, needed.part);
  return cut;
}

}  // namespace nook
