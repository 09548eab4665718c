// Blank, checks, tapers, scribes, notches, holes of one piece.
#include "shop/cut_piece.h"

#include <algorithm>
#include <cmath>

#include "shop/wild.h"
#include "solid/boolean.h"

namespace nook {
namespace {

constexpr double kInset = 50.8;  // mm from an end at which a check is taken: 2 in. Chosen
constexpr double kBeyond = 50;   // mm that a notch is drawn out beyond its edge before it is cut
constexpr double kAtEdge = 0.5;  // mm; a notch this near a side opens to it. Chosen
constexpr double kSquareCorner = 1;  // mm^2 by which a square notch's area may differ. Chosen
constexpr double kRoughStep = 300;   // mm between figures for roughing out. Chosen

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

// The way out of the piece where a point lies on a side of it, or on two; 0 inside.
Vec2 way_out(Vec2 p, const Bounds& drawn) {
  const auto at = [](double x, double low, double high) {
    return x < low + kAtEdge ? -kBeyond : x > high - kAtEdge ? kBeyond : 0;
  };
  return {at(p.x, drawn.low.x, drawn.high.x), at(p.y, drawn.low.y, drawn.high.y)};
}

// A notch, and strips that carry it beyond the edges it opens to: the finished
// edge may lie further out than the drawn one.
void add_to_cut_out(std::vector<Polygon>& rings, const NotchFit& notch, const Bounds& drawn) {
  const size_t n = notch.polygon.size();
  rings.push_back(notch.polygon);
  for (size_t i = 0; i < n; ++i) {
    const Vec2 a = notch.polygon[i], b = notch.polygon[(i + 1) % n];
    const Vec2 out_a = way_out(a, drawn), out_b = way_out(b, drawn);
    if (out_a.x != 0 && out_a.x == out_b.x)
      rings.push_back({a, b, b + Vec2{out_a.x, 0}, a + Vec2{out_a.x, 0}});
    if (out_a.y != 0 && out_a.y == out_b.y)
      rings.push_back({a, b, b + Vec2{0, out_a.y}, a + Vec2{0, out_a.y}});
    if (out_a.x != 0 && out_a.y != 0)
      rings.push_back({a, a + Vec2{out_a.x, 0}, a + out_a, a + Vec2{0, out_a.y}});
  }
}

Polygon largest(const Regions& regions) {
  const auto best = std::max_element(
      regions.begin(), regions.end(),
      [](const auto& a, const auto& b) { return signed_area(a.outline) < signed_area(b.outline); });
  return best == regions.end() ? Polygon{} : best->outline;
}

// What is left of the fitted outline.
Polygon notched(const CutInput& input, int k, const NeededPiece& needed) {
  const Bounds drawn = bounds_of(needed.drawn->outline);
  std::vector<Polygon> rings;
  for (const NotchFit& notch : input.fit.notches)
    if (notch.piece == k && !notch.polygon.empty()) add_to_cut_out(rings, notch, drawn);
  if (rings.empty()) return needed.fitted;
  for (Polygon& ring : rings)
    for (Vec2& p : ring) p = p - needed.closer;
  return largest(subtract(Regions{{needed.fitted, {}}}, unite(rings)));
}

bool is_square(const Polygon& polygon) {
  const CutSize size = size_of(polygon);
  return std::abs(signed_area(polygon)) > size.width * size.height - kSquareCorner;
}

void list_notches(CutPiece& cut, const CutInput& input, int k, const NeededPiece& needed) {
  for (const NeededNotch& notch : needed.notches)
    cut.notches.push_back({notch.corner, notch.width_mm, notch.height_mm, {}, notch.around});
  for (const NotchFit& notch : input.fit.notches) {
    if (notch.piece != k || notch.polygon.empty()) continue;
    const bool told = std::any_of(cut.notches.begin(), cut.notches.end(), [&](const CutNotch& n) {
      return !n.corner.empty() && n.around == notch.around;
    });
    if (told && is_square(notch.polygon)) continue;
    const CutSize size = size_of(notch.polygon);
    cut.notches.push_back({"", size.width, size.height, notch.polygon, notch.around});
  }
}

bool upright(const Polygon& outline, const EdgeChoice& edge) {
  const auto side = side_meant(outline, edge);
  return !side || *side == EdgeSide::left || *side == EdgeSide::right;
}

void add_taper(CutPiece& cut, const NeededPiece& needed, const ContactFit& found) {
  const Bounds b = bounds_of(needed.outline);
  CutTaper taper{found.edge, upright(needed.drawn->outline, found.how->edge), 0, 0};
  if (taper.widths) {
    taper.first_mm = chord_level(needed.outline, b.low.y).length();
    taper.last_mm = chord_level(needed.outline, b.high.y).length();
  } else {
    taper.first_mm = chord_upright(needed.outline, b.low.x).length();
    taper.last_mm = chord_upright(needed.outline, b.high.x).length();
  }
  cut.tapers.push_back(taper);
}

// How far the finished line lies out of the drawn edge at one spot of a gap line.
double line_out(const ContactFit& found, const GapPoint& point, double closer) {
  return point.gap - found.how->gap.mm - closer;
}

// What comes off at spots about a foot apart, ends and the least and greatest included.
std::vector<CutScribe::Spot> rough_spots(const std::vector<CutScribe::Spot>& all) {
  if (all.size() < 3) return all;
  const auto by_off = [](const auto& a, const auto& b) { return a.off < b.off; };
  const double least = std::min_element(all.begin(), all.end(), by_off)->at;
  const double most = std::max_element(all.begin(), all.end(), by_off)->at;
  std::vector<CutScribe::Spot> kept;
  for (const CutScribe::Spot& spot : all) {
    const bool end = spot.at == all.front().at || spot.at == all.back().at;
    const bool far = kept.empty() || spot.at - kept.back().at > kRoughStep;
    if (end || far || spot.at == least || spot.at == most) kept.push_back(spot);
  }
  return kept;
}

// Where the finished line lies furthest out of the drawn edge.
double furthest_out(const ContactFit& found, double closer) {
  double most = 0;
  for (const GapPoint& point : found.line) most = std::max(most, line_out(found, point, closer));
  return most;
}

double closer_by(const ContactFit& found) {
  return std::clamp(found.gap.most - found.how->gap.mm, 0.0, found.wood_mm);
}

void add_scribe(CutPiece& cut, const NeededPiece& needed, const ContactFit& found, double beyond) {
  const double closer = closer_by(found);
  CutScribe scribe;
  scribe.edge = found.edge, scribe.meets = found.meets;
  scribe.shop = found.how->shop;
  scribe.upright = upright(needed.drawn->outline, found.how->edge);
  scribe.touches_at = found.touches_at, scribe.bevel_mm = found.bevel_mm;
  for (const GapPoint& point : found.line)
    scribe.spots.push_back({point.at, beyond - line_out(found, point, closer)});
  for (const CutScribe::Spot& spot : scribe.spots)
    scribe.setting_mm = std::max(scribe.setting_mm, spot.off);
  scribe.spots = rough_spots(scribe.spots);
  cut.scribes.push_back(std::move(scribe));
}

const WildEdge* wild_for(const std::vector<WildEdge>& wild, int contact) {
  for (const WildEdge& edge : wild)
    if (edge.contact == contact) return &edge;
  return nullptr;
}

void add_edges(CutPiece& cut, const CutInput& input, int k, const NeededPiece& needed) {
  const std::vector<WildEdge> wild = wild_edges(input.fit.pieces[k], input.design, input.fit);
  for (const ContactFit& found : input.fit.contacts) {
    if (found.piece != k || !found.meets_anything || found.line.empty()) continue;
    if (!run_of(needed.drawn->outline, found.how->edge)) continue;
    if (found.how->by == Fitting::taper) add_taper(cut, needed, found);
    if (found.how->by != Fitting::scribe) continue;
    const double out = furthest_out(found, closer_by(found));
    const WildEdge* left = wild_for(wild, found.contact);
    add_scribe(cut, needed, found, left ? left->beyond_mm : out);
    if (left) cut.wild.push_back({left->edge, left->beyond_mm - out});
  }
  for (const WildEdge& edge : wild)  // nothing is known of its gap
    if (std::none_of(input.fit.contacts.begin(), input.fit.contacts.end(),
                     [&](const ContactFit& f) {
                       return f.contact == edge.contact && f.piece == k && !f.line.empty();
                     }))
      cut.wild.push_back({edge.edge, edge.beyond_mm});
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
  cut.pilots.push_back({hole.id, hole.end, hole.edge, hole.from_end_mm, hole.from_edge_mm,
                        hole.clearance_mm, hole.probe_first});
}

void add_pilots(CutPiece& cut, const DrillAnswer& drill, const std::string& piece) {
  for (const WallDrill& wall : drill.walls)
    for (const Hole& hole : wall.holes)
      if (hole.part == piece) add_pilot(cut, hole);
  for (const JointDrill& joint : drill.parts)
    for (const Hole& hole : joint.holes)
      if (joint.part == piece) add_pilot(cut, hole);
}

bool exact(const NeededPiece& needed, EdgeSide a, EdgeSide b) {
  return needed.sides[static_cast<size_t>(a)].exact || needed.sides[static_cast<size_t>(b)].exact;
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
  cut.outline = notched(input, k, needed);
  list_notches(cut, input, k, needed);
  add_edges(cut, input, k, needed);
  for (const Cutout& cutout : needed.drawn->cutouts)
    cut.holes.push_back(hole_of(cutout, {blank, laid_from(needed)}));
  if (input.drill) add_pilots(cut, *input.drill, needed.part);
  return cut;
}

}  // namespace nook
