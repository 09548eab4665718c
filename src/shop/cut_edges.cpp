// What comes off each edge, and where.
#include "shop/cut_edges.h"

#include <algorithm>
#include <cmath>

#include "design/side.h"
#include "shop/level_tape.h"
#include "shop/wild.h"

namespace nook {
namespace {

constexpr double kNoWood = 0.5;  // mm: less is not called wild. Chosen
constexpr double kPast = 1;  // mm past a blank's end, where a tape reads from side to side. Chosen
constexpr double kRoughStep = 300;  // mm between figures for roughing out. Chosen

bool upright(const Polygon& outline, const EdgeChoice& edge) {
  const auto side = side_meant(outline, edge);
  return !side || nook::upright(*side);
}

// What a tape reads from side to side along the bottom of the blank and along its top, however the
// piece's own bottom and top lie.
std::pair<double, double> at_ends(const Polygon& outline) {
  const Box2 b = box_of(outline);
  return {LevelTape(outline, b.low.y - kPast).read(outline, 0),
          LevelTape(outline, b.high.y + kPast).read(outline, b.high.y - b.low.y)};
}

// How far in from the blank a side's lower (left) and upper (right) end lie; 0 of what is no side.
std::pair<double, double> off_blank(const Polygon& outline, const EdgeChoice& edge) {
  const auto side = side_meant(outline, edge);
  if (!side) return {};
  const EdgeRun run = side_of(outline, *side);
  const Box2 b = box_of(outline);
  const auto in = [&](Vec2 p) {
    return *side == EdgeSide::left     ? p.x - b.low.x
           : *side == EdgeSide::right  ? b.high.x - p.x
           : *side == EdgeSide::bottom ? p.y - b.low.y
                                       : b.high.y - p.y;
  };
  const Vec2 from = outline[run.first], to = outline[(run.last + 1) % outline.size()];
  const bool forward = *side == EdgeSide::right || *side == EdgeSide::bottom;
  return forward ? std::pair(in(from), in(to)) : std::pair(in(to), in(from));
}

void add_taper(CutPiece& cut, const NeededPiece& needed, const ContactFit& found) {
  const bool widths = upright(needed.drawn->outline, found.how->edge);
  const auto [first, last] = at_ends(widths ? needed.outline : on_its_side(needed.outline));
  const auto [off_first, off_last] = off_blank(needed.outline, found.how->edge);
  cut.tapers.push_back({found.edge, widths, first, last, off_first, off_last});
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

// One scribed edge: how far its piece comes closer, and how far its blank goes beyond as drawn.
struct Scribing {
  const ContactFit& found;
  double closer, beyond;
};

void add_scribe(CutPiece& cut, const NeededPiece& needed, const Scribing& edge) {
  const ContactFit& found = edge.found;
  CutScribe scribe;
  scribe.edge = found.edge, scribe.meets = found.meets;
  scribe.shop = found.how->shop;
  scribe.upright = upright(needed.drawn->outline, found.how->edge);
  scribe.touches_at = found.touches_at, scribe.bevel_mm = found.bevel_mm;
  for (const GapPoint& point : found.line)
    scribe.spots.push_back({point.at, edge.beyond - line_out(found, point, edge.closer)});
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

}  // namespace

void add_edges(CutPiece& cut, const CutInput& input, int k, const NeededPiece& needed) {
  const std::vector<WildEdge> wild = wild_edges(input.fit.pieces[k], input.design, input.fit);
  for (const ContactFit& found : input.fit.contacts) {
    if (found.piece != k || !found.meets_anything || found.line.empty()) continue;
    if (!run_of(needed.drawn->outline, found.how->edge)) continue;
    if (found.how->by == Fitting::taper) add_taper(cut, needed, found);
    if (found.how->by != Fitting::scribe) continue;
    const double closer = closing(input.fit.pieces[k], input.design, found);
    const double out = furthest_out(found, closer);
    const WildEdge* left = wild_for(wild, found.contact);
    add_scribe(cut, needed, {found, closer, left ? left->beyond_mm : out});
    if (left && left->beyond_mm > out + kNoWood)
      cut.wild.push_back({left->edge, left->beyond_mm - out});
  }
  for (const WildEdge& edge : wild)  // nothing is known of its gap
    if (std::none_of(input.fit.contacts.begin(), input.fit.contacts.end(),
                     [&](const ContactFit& f) {
                       return f.contact == edge.contact && f.piece == k && !f.line.empty();
                     }))
      cut.wild.push_back({edge.edge, edge.beyond_mm});
}

}  // namespace nook
