// Drawn outlines changed as the fit says: tapers, shop scribes, notches gathered by corner.
#include "shop/needed.h"

#include <algorithm>
#include <cmath>

#include "design/fitting.h"
#include "design/side.h"
#include "fit/straight_cut.h"
#include "shop/wild.h"

namespace nook {
namespace {

bool upright_side(const EdgeChoice& edge) {
  const EdgeSide* side = std::get_if<EdgeSide>(&edge);
  return side && upright(*side);
}

// Where a point of a run stands in the numbers of its gap line (see GapPoint::at).
double station(const Polygon& outline, const EdgeChoice& edge, EdgeRun run, Vec2 point) {
  if (std::holds_alternative<EdgeSide>(edge)) return upright_side(edge) ? point.y : point.x;
  return norm(point - outline[run.first]);
}

// An edge that is cut to the wall beforehand: where its finished line lies, mm out of the drawn
// edge.
struct CutLine {
  EdgeRun run;
  std::vector<Vec2> points;  // along the run, out of it
};

// A contact that is cut to the room, and how far its piece then comes closer.
struct RoomCut {
  const ContactFit* found;
  double closer;
};

// The gap along the run less what is wanted open and what the piece comes closer.
std::optional<CutLine> cut_line(const Polygon& outline, const RoomCut& cut) {
  const ContactFit& found = *cut.found;
  const EdgeChoice& edge = found.how->edge;
  const std::optional<EdgeRun> run = run_of(outline, edge);
  if (!run || found.line.empty()) return std::nullopt;
  const Vec2 first = outline[run->first], last = outline[(run->last + 1) % outline.size()];
  const double start = station(outline, edge, *run, first);
  const double end = station(outline, edge, *run, last);
  CutLine line{*run, {}};
  for (const GapPoint& point : found.line)
    line.points.push_back({norm(last - first) * (point.at - start) / (end - start),
                           point.gap - found.how->gap.mm - cut.closer});
  std::sort(line.points.begin(), line.points.end(), [](Vec2 a, Vec2 b) { return a.x < b.x; });
  return line;
}

Polygon tapered(const Polygon& outline, const CutLine& line) {
  const StraightCut cut = straight_cut(line.points);
  const Vec2 first = outline[line.run.first];
  const double length = norm(outline[(line.run.last + 1) % outline.size()] - first);
  return moved(outline, line.run, {cut.at, cut.at + cut.slope * length});
}

// The edge with the line's own points in it. The corners move as for a taper.
Polygon scribed(const Polygon& outline, const CutLine& line) {
  const EdgeRun run = line.run;
  const Vec2 first = outline[run.first], last = outline[(run.last + 1) % outline.size()];
  const double length = norm(last - first);
  const Vec2 along = (1 / length) * (last - first);
  Polygon result = moved(outline, run, {line.points.front().y, line.points.back().y});
  std::vector<Vec2> inner;
  for (const Vec2 p : line.points)
    if (p.x > 1 && p.x < length - 1)  // the corners stand already
      inner.push_back(first + p.x * along - p.y * left_of(along));
  if (run.last > run.first)  // a straight run of several edges becomes one
    result.erase(result.begin() + run.first + 1, result.begin() + run.last + 1);
  result.insert(result.begin() + run.first + 1, inner.begin(), inner.end());
  return result;
}

bool is_cut(const Contact& contact) {
  return is_cut_to_fit(contact.by);
}
std::vector<RoomCut> cuts(const Design& design, const FitAnswer& fit, int piece,
                          bool (*counts)(const Contact&)) {
  std::vector<RoomCut> all;
  for (const ContactFit& found : fit.contacts)
    if (found.piece == piece && found.meets_anything && counts(*found.how))
      all.push_back({&found, closing(fit.pieces[piece], design, found)});
  return all;
}

// Tapers first: they keep the numbers of the edges. Scribes from the last edge to the first.
Polygon cut_to(const Polygon& drawn, const std::vector<RoomCut>& cuts) {
  Polygon outline = drawn;
  std::vector<CutLine> scribes;
  for (const RoomCut& cut : cuts) {
    const auto line = cut_line(outline, cut);
    if (!line) continue;
    if (cut.found->how->by == Fitting::taper)
      outline = tapered(outline, *line);
    else
      scribes.push_back(*line);
  }
  std::sort(scribes.begin(), scribes.end(),
            [](const CutLine& a, const CutLine& b) { return a.run.first > b.run.first; });
  for (const CutLine& line : scribes) outline = scribed(outline, line);
  return outline;
}

// How far the piece moves when the edges cut to the room close up, in its own frame.
Vec2 closing_move(const Polygon& outline, const std::vector<RoomCut>& cuts) {
  Vec2 move;
  for (const RoomCut& cut : cuts) {
    const auto run = run_of(outline, cut.found->how->edge);
    if (!run || cut.found->line.empty()) continue;
    const Vec2 along = outline[(run->last + 1) % outline.size()] - outline[run->first];
    move = move - (cut.closer / norm(along)) * left_of(along);
  }
  return move;
}

bool is_room(const std::string& meets) {
  return !wall_named(meets).empty() || meets == "floor" || meets == "ceiling";
}

std::array<SideAllowance, 4> allowances(const Design& design, const FitAnswer& fit,
                                        const Piece& piece) {
  std::array<SideAllowance, 4> sides;
  SideAllowance usual;
  usual.over = kMayBeOver, usual.under = kSawStrays;
  sides.fill(usual);
  const auto side_for = [&](int c) -> SideAllowance* {
    const auto side = side_meant(piece.drawn->outline, design.contacts[c].edge);
    return side ? &sides[static_cast<size_t>(*side)] : nullptr;
  };
  for (int c = 0; c < static_cast<int>(design.contacts.size()); ++c) {
    const Contact& contact = design.contacts[c];
    SideAllowance* side = is_named(piece, contact.part) ? side_for(c) : nullptr;
    if (!side) continue;
    side->meets_wall = side->meets_wall || is_room(contact.meets);
    side->to_room = side->to_room || is_cut_to_fit(contact.by);
    side->met = true;
    side->exact = side->exact || contact.by == Fitting::clear;
    if (contact.allow && contact.by != Fitting::clear)
      side->under = std::min(side->under, contact.allow->mm);
  }
  for (const WildEdge& edge : wild_edges(piece, design, fit))
    if (SideAllowance* side = side_for(edge.contact))
      side->wild = std::max(side->wild, edge.beyond_mm);
  return sides;
}

// The corner of the outline that a notch opens; nothing where it opens to one side only.
std::optional<NeededNotch> in_corner(const NeededPiece& piece, const NotchFit& notch) {
  const Box2 drawn = box_of(piece.drawn->outline);
  Box2 cut = box_of(notch.polygon);
  const bool left = cut.low.x<drawn.low.x + kAtEdge, right = cut.high.x> drawn.high.x - kAtEdge;
  const bool low = cut.low.y<drawn.low.y + kAtEdge, high = cut.high.y> drawn.high.y - kAtEdge;
  if (left == right || low == high) return std::nullopt;
  cut = {cut.low - piece.closer, cut.high - piece.closer};
  const Chord level = chord_level(piece.fitted, 0.5 * (cut.low.y + cut.high.y));
  const Chord upright = chord_upright(piece.fitted, 0.5 * (cut.low.x + cut.high.x));
  NeededNotch needed;
  needed.corner = std::string(low ? "lower" : "upper") + (left ? " left" : " right");
  needed.width_mm = left ? cut.high.x - level.from : level.to - cut.low.x;
  needed.height_mm = low ? cut.high.y - upright.from : upright.to - cut.low.y;
  const auto wild = [&](EdgeSide side, double out) {
    return std::max(0.0, piece.sides[static_cast<size_t>(side)].wild - out);
  };
  needed.wild_across_mm = left ? wild(EdgeSide::left, drawn.low.x - level.from)
                               : wild(EdgeSide::right, level.to - drawn.high.x);
  needed.wild_up_mm = low ? wild(EdgeSide::bottom, drawn.low.y - upright.from)
                          : wild(EdgeSide::top, upright.to - drawn.high.y);
  needed.around = notch.around;
  return needed;
}

void gather(std::vector<NeededNotch>& notches, const NeededNotch& next) {
  for (NeededNotch& known : notches)
    if (known.corner == next.corner) {
      known.width_mm = std::max(known.width_mm, next.width_mm);
      known.height_mm = std::max(known.height_mm, next.height_mm);
      known.wild_across_mm = std::max(known.wild_across_mm, next.wild_across_mm);
      known.wild_up_mm = std::max(known.wild_up_mm, next.wild_up_mm);
      known.clearance_mm = std::min(known.clearance_mm, next.clearance_mm);
      return;
    }
  notches.push_back(next);
}

}  // namespace

LaidFrom laid_from(const NeededPiece& piece) {
  const auto only = [&](EdgeSide usual, EdgeSide other) {
    return piece.sides[static_cast<size_t>(usual)].to_room &&
           !piece.sides[static_cast<size_t>(other)].to_room;
  };
  return {only(EdgeSide::left, EdgeSide::right) ? EdgeSide::right : EdgeSide::left,
          only(EdgeSide::bottom, EdgeSide::top) ? EdgeSide::top : EdgeSide::bottom};
}

std::vector<NeededPiece> needed_pieces(const Design& design, const FitAnswer& fit) {
  std::vector<NeededPiece> needed;
  for (int k = 0; k < static_cast<int>(fit.pieces.size()); ++k) {
    const Piece& piece = fit.pieces[k];
    const Polygon& drawn = piece.drawn->outline;
    const std::vector<RoomCut> room_cuts = cuts(design, fit, k, is_cut);
    NeededPiece next{piece.name,
                     piece.drawn,
                     &design.stock[piece.drawn->stock],
                     piece.thickness,
                     cut_to(drawn, room_cuts),
                     closing_move(drawn, room_cuts),
                     cut_to(drawn, cuts(design, fit, k, is_forecut)),
                     allowances(design, fit, piece),
                     {},
                     false};
    for (const NotchFit& notch : fit.notches) {
      if (notch.piece != k || notch.polygon.empty()) continue;
      if (auto corner = in_corner(next, notch)) {
        corner->clearance_mm = design.contacts[notch.contact].clearance.mm;
        gather(next.notches, *corner);
      } else
        next.notched_between = true;
    }
    needed.push_back(std::move(next));
  }
  return needed;
}

EdgeSide notch_side(const std::string& corner, bool across) {
  if (across) return corner.find("left") != std::string::npos ? EdgeSide::left : EdgeSide::right;
  return corner.find("lower") != std::string::npos ? EdgeSide::bottom : EdgeSide::top;
}

bool is_forecut(const Contact& contact) {
  return is_cut(contact) && (contact.by == Fitting::taper || contact.shop);
}

}  // namespace nook
