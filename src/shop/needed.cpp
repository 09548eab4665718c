// Drawn outlines changed as the fit says: tapers, shop scribes, notches gathered by corner.
#include "shop/needed.h"

#include <algorithm>
#include <cmath>

#include "shop/straight_cut.h"
#include "shop/wild.h"

namespace nook {
namespace {

constexpr double kAtEdge = 0.5;  // mm; a notch this near a side opens to it. Chosen

bool upright_side(const EdgeChoice& edge) {
  const EdgeSide* side = std::get_if<EdgeSide>(&edge);
  return side && (*side == EdgeSide::left || *side == EdgeSide::right);
}

// Where a point of a run stands in the numbers of its gap line (see GapPoint::at).
double station(const Polygon& outline, const EdgeChoice& edge, EdgeRun run, Vec2 point) {
  if (std::holds_alternative<EdgeSide>(edge)) return upright_side(edge) ? point.y : point.x;
  return norm(point - outline[run.first]);
}

Polygon tapered(const Polygon& outline, const EdgeChoice& edge, const ContactFit& found) {
  const std::optional<EdgeRun> run = run_of(outline, edge);
  if (!run) return outline;
  const StraightCut cut = straight_cut(found.line);
  const Vec2 first = outline[run->first];
  const Vec2 last = outline[(run->last + 1) % outline.size()];
  return moved(
      outline, *run,
      {cut.out(station(outline, edge, *run, first)), cut.out(station(outline, edge, *run, last))});
}

// The edge with the gap's own points in it. The corners move as for a taper.
Polygon scribed(const Polygon& outline, const EdgeChoice& edge, const ContactFit& found) {
  const std::optional<EdgeRun> run = run_of(outline, edge);
  if (!run || found.line.empty()) return outline;
  const int n = static_cast<int>(outline.size());
  const Vec2 first = outline[run->first], last = outline[(run->last + 1) % n];
  const Vec2 along = (1 / norm(last - first)) * (last - first);
  std::vector<std::pair<double, double>> points;  // along the run, out of it
  const double start = station(outline, edge, *run, first);
  const double end = station(outline, edge, *run, last);
  for (const GapPoint& point : found.line)
    points.push_back({norm(last - first) * (point.at - start) / (end - start), point.gap});
  std::sort(points.begin(), points.end());
  Polygon result = moved(outline, *run, {points.front().second, points.back().second});
  std::vector<Vec2> inner;
  for (const auto& [way, out] : points)
    if (way > 1 && way < norm(last - first) - 1)  // the corners stand already
      inner.push_back(first + way * along - out * left_of(along));
  if (run->last > run->first)  // a straight run of several edges becomes one
    result.erase(result.begin() + run->first + 1, result.begin() + run->last + 1);
  result.insert(result.begin() + run->first + 1, inner.begin(), inner.end());
  return result;
}

const ContactFit* found_for(const FitAnswer& fit, int contact, int piece) {
  for (const ContactFit& found : fit.contacts)
    if (found.contact == contact && found.piece == piece && found.meets_anything) return &found;
  return nullptr;
}

// Tapers first: they keep the numbers of the edges. Shop scribes from the last edge to the first.
Polygon finished(const Design& design, const FitAnswer& fit, int k) {
  Polygon outline = fit.pieces[k].drawn->outline;
  std::vector<std::pair<int, int>> scribes;  // first point of the run, contact
  for (int c = 0; c < static_cast<int>(design.contacts.size()); ++c) {
    const Contact& contact = design.contacts[c];
    const ContactFit* found = found_for(fit, c, k);
    if (!found) continue;
    if (contact.by == Fitting::taper) outline = tapered(outline, contact.edge, *found);
    if (contact.by == Fitting::scribe && contact.shop)
      if (const auto run = run_of(outline, contact.edge)) scribes.push_back({run->first, c});
  }
  std::sort(scribes.rbegin(), scribes.rend());
  for (const auto& [first, c] : scribes)
    outline = scribed(outline, design.contacts[c].edge, *found_for(fit, c, k));
  return outline;
}

bool is_room(const std::string& meets) {
  return !wall_named(meets).empty() || meets == "floor" || meets == "ceiling";
}

std::array<SideAllowance, 4> allowances(const Design& design, const FitAnswer& fit,
                                        const Piece& piece) {
  std::array<SideAllowance, 4> sides;
  sides.fill({kSawStrays, kSawStrays, 0, false});
  const auto side_for = [&](int c) -> SideAllowance* {
    const auto side = side_meant(piece.drawn->outline, design.contacts[c].edge);
    return side ? &sides[static_cast<size_t>(*side)] : nullptr;
  };
  for (int c = 0; c < static_cast<int>(design.contacts.size()); ++c) {
    const Contact& contact = design.contacts[c];
    SideAllowance* side = means(contact.part, piece) ? side_for(c) : nullptr;
    if (!side) continue;
    side->meets_wall = side->meets_wall || is_room(contact.meets);
    if (contact.allow && contact.by != Fitting::clear)
      side->under = std::min(side->under, contact.allow->mm);
  }
  for (const WildEdge& edge : wild_edges(piece, design, fit))
    if (SideAllowance* side = side_for(edge.contact))
      side->wild = std::max(side->wild, edge.beyond_mm);
  return sides;
}

// The corner of the outline that a notch opens; nothing where it opens to one side only.
std::optional<NeededNotch> in_corner(const Polygon& outline, const Bounds& drawn,
                                     const NotchFit& notch) {
  const Bounds cut = bounds_of(notch.polygon);
  const bool left = cut.low.x<drawn.low.x + kAtEdge, right = cut.high.x> drawn.high.x - kAtEdge;
  const bool low = cut.low.y<drawn.low.y + kAtEdge, high = cut.high.y> drawn.high.y - kAtEdge;
  if (left == right || low == high) return std::nullopt;
  const Chord level = chord_level(outline, 0.5 * (cut.low.y + cut.high.y));
  const Chord upright = chord_upright(outline, 0.5 * (cut.low.x + cut.high.x));
  NeededNotch needed;
  needed.corner = std::string(low ? "lower" : "upper") + (left ? " left" : " right");
  needed.width_mm = left ? cut.high.x - level.from : level.to - cut.low.x;
  needed.height_mm = low ? cut.high.y - upright.from : upright.to - cut.low.y;
  needed.around = notch.around;
  return needed;
}

void gather(std::vector<NeededNotch>& notches, const NeededNotch& next) {
  for (NeededNotch& known : notches)
    if (known.corner == next.corner) {
      known.width_mm = std::max(known.width_mm, next.width_mm);
      known.height_mm = std::max(known.height_mm, next.height_mm);
      return;
    }
  notches.push_back(next);
}

}  // namespace

std::vector<NeededPiece> needed_pieces(const Design& design, const FitAnswer& fit) {
  std::vector<NeededPiece> needed;
  for (int k = 0; k < static_cast<int>(fit.pieces.size()); ++k) {
    const Piece& piece = fit.pieces[k];
    NeededPiece next{piece.name,
                     piece.drawn,
                     &design.stock[piece.drawn->stock],
                     piece.thickness,
                     finished(design, fit, k),
                     allowances(design, fit, piece),
                     {}};
    const Bounds drawn = bounds_of(piece.drawn->outline);
    for (const NotchFit& notch : fit.notches) {
      if (notch.piece != k || notch.polygon.empty()) continue;
      if (auto corner = in_corner(next.outline, drawn, notch)) {
        corner->clearance_mm = design.contacts[notch.contact].clearance.mm;
        gather(next.notches, *corner);
      }
    }
    needed.push_back(std::move(next));
  }
  return needed;
}

}  // namespace nook
