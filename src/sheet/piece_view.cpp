// Pieces gathered from the answers that know about them.
#include "sheet/piece_view.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sheet/draft.h"
#include "sheet/elevation.h"
#include "shop/cut_piece.h"

namespace nook {
namespace {

// The edges that holes count from decide where the dimensions start.
void take_holes(PieceView& view, const std::vector<Hole>& holes) {
  for (const Hole& hole : holes) {
    if (hole.part != view.name) continue;
    view.holes.push_back({{hole.u_mm, hole.v_mm}, number_of(hole.id), hole.probe_first});
    view.shy_of_left = hole.end == "right";
    view.shy_of_bottom = hole.edge == "top";
  }
}

int index_of(const JobScene& scene, const std::string& name) {
  for (std::size_t i = 0; i < scene.pieces.size(); ++i)
    if (scene.pieces[i].name == name) return static_cast<int>(i);
  return -1;
}

Vec2 outward(EdgeSide side) {
  switch (side) {
    case EdgeSide::left:
      return {-1, 0};
    case EdgeSide::right:
      return {1, 0};
    case EdgeSide::bottom:
      return {0, -1};
    case EdgeSide::top:
      break;
  }
  return {0, 1};
}

// The point of a straight side at v (left and right) or u (bottom and top).
Vec2 on_side(const PageBox& box, EdgeSide side, double at) {
  switch (side) {
    case EdgeSide::left:
      return {box.low.x, at};
    case EdgeSide::right:
      return {box.high.x, at};
    case EdgeSide::bottom:
      return {at, box.low.y};
    case EdgeSide::top:
      break;
  }
  return {at, box.high.y};
}

EdgeSpot on_run(const Polygon& outline, EdgeRun run, double at) {
  const int n = static_cast<int>(outline.size());
  for (int e = run.first;; e = (e + 1) % n) {
    const Vec2 a = outline[e], d = outline[(e + 1) % n] - a;
    const double length = norm(d);
    if (at <= length + 1e-6 || e == run.last)
      return {a + (length > 0 ? std::min(1.0, at / length) : 0) * d, (-1 / length) * left_of(d)};
    at -= length;
  }
}

std::string gap_words(const JobScene& scene, const ContactFit& contact) {
  const auto said = [&](double mm) {
    return with_unit(millimetres(std::max(0.0, mm)), scene.rounding);
  };
  if (said(contact.gap.most) == said(contact.gap.least))
    return fmt::format("{}: gap {}", contact.meets, said(contact.gap.most));
  return fmt::format("{}: gap {} to {}", contact.meets,
                     written(millimetres(std::max(0.0, contact.gap.least)), scene.rounding),
                     said(contact.gap.most));
}

void take_gaps(PieceView& view, const JobScene& scene, int piece) {
  const Polygon& outline = scene.pieces[piece].drawn->outline;
  for (const ContactFit& contact : scene.fit->contacts) {
    if (contact.piece != piece || !contact.meets_anything || contact.line.size() < 2 ||
        std::holds_alternative<PieceFace>(contact.how->edge) ||
        contact.gap.most < scene.rounding.step.mm / 2)
      continue;
    PieceGap gap;
    gap.words = gap_words(scene, contact);
    for (const GapPoint& point : contact.line) {
      const EdgeSpot spot = spot_of(outline, contact.how->edge, point.at);
      gap.spots.push_back({spot.at, std::max(0.0, point.gap)});
      gap.out = spot.out;
    }
    view.gaps.push_back(std::move(gap));
  }
}

// A scribe line cut beforehand, from what comes off the blank.
void take_scribes(PieceView& view, const CutPiece& piece) {
  const PageBox box = box_round(view.blank.empty() ? view.outline : view.blank);
  for (const CutScribe& scribe : piece.scribes) {
    if (!scribe.shop) continue;
    const bool second = scribe.edge == "right" || scribe.edge == "top";
    PieceScribe line;
    line.words = scribe.edge + " edge at " + scribe.meets;
    for (const CutScribe::Spot& spot : scribe.spots) {
      const double across = scribe.upright
                                ? (second ? box.high.x - spot.off : box.low.x + spot.off)
                                : (second ? box.high.y - spot.off : box.low.y + spot.off);
      line.line.push_back(scribe.upright ? Vec2{across, spot.at} : Vec2{spot.at, across});
    }
    view.scribes.push_back(std::move(line));
  }
}

// The corner that a square notch leaves in the wood: the point of the outline nearest to where it
// would be with straight edges.
Vec2 inner_corner(const CutNotch& notch, const Polygon& outline, bool right, bool upper) {
  const PageBox piece = box_round(outline);
  const Vec2 about{right ? piece.high.x - notch.width_mm : piece.low.x + notch.width_mm,
                   upper ? piece.high.y - notch.height_mm : piece.low.y + notch.height_mm};
  return *std::min_element(outline.begin(), outline.end(),
                           [&](Vec2 a, Vec2 b) { return norm(a - about) < norm(b - about); });
}

// A square notch where the finished outline has it, or the outline it has of its own.
Polygon notch_outline(const CutNotch& notch, const Polygon& outline) {
  if (notch.corner.empty()) return notch.polygon;
  const bool right = notch.corner.find("right") != std::string::npos;
  const bool upper = notch.corner.find("upper") != std::string::npos;
  const Vec2 inner = inner_corner(notch, outline, right, upper);
  const Vec2 low{right ? inner.x : inner.x - notch.width_mm,
                 upper ? inner.y : inner.y - notch.height_mm};
  return outline_of({low, low + Vec2{notch.width_mm, notch.height_mm}});
}

bool names_edge(const CutPiece& piece, const std::string& edge) {
  const auto named = [&](const auto& list) {
    return std::any_of(list.begin(), list.end(), [&](const auto& it) { return it.edge == edge; });
  };
  return named(piece.wild) || named(piece.tapers) || named(piece.scribes);
}

Polygon blank_of(const JobScene& scene, int piece) {
  const NeededPiece needed = needed_pieces(*scene.design, *scene.fit)[piece];
  return blank_outline({*scene.design, *scene.fit, scene.drill}, piece, needed);
}

// A level piece has none; one that stands as it is drawn needs none.
std::optional<EdgeSide> side_up(const Frame& frame) {
  constexpr double kUpright = 0.9;
  if (frame.u.z > kUpright) return EdgeSide::right;
  if (frame.u.z < -kUpright) return EdgeSide::left;
  if (frame.v.z < -kUpright) return EdgeSide::bottom;
  return std::nullopt;
}

}  // namespace

EdgeSpot spot_of(const Polygon& outline, const EdgeChoice& edge, double at) {
  if (const EdgeRun* run = std::get_if<EdgeRun>(&edge)) return on_run(outline, *run, at);
  const EdgeSide side = std::get<EdgeSide>(edge);
  return {on_side(box_round(outline), side, at), outward(side)};
}

std::string letter_of(std::size_t n) {
  std::string letters(1, static_cast<char>('a' + n % 26));
  return n < 26 ? letters : letter_of(n / 26 - 1) + letters;
}

PieceView bench_view(const JobScene& scene, int piece) {
  const Piece& it = scene.pieces[piece];
  PieceView view;
  view.name = it.name;
  view.outline = it.drawn->outline;
  view.cutouts = it.drawn->cutouts;
  view.show = it.drawn->show;
  view.up = side_up(scene.frames[piece]);
  if (scene.drill)
    for (const WallDrill& wall : scene.drill->walls) take_holes(view, wall.holes);
  return view;
}

PieceView cut_view(const JobScene& scene, const CutPiece& piece) {
  const int index = index_of(scene, piece.names.front());
  PieceView view = bench_view(scene, index);
  view.name = piece.part;
  if (piece.names.size() > 1) view.note = fmt::format("{} alike", piece.names.size());
  view.outline = piece.outline;
  if (scene.drill)
    for (const JointDrill& joint : scene.drill->parts)
      for (const Hole& hole : joint.holes)
        if (hole.part == piece.names.front())
          view.crosses.push_back(
              {{hole.u_mm, hole.v_mm}, letter_of(view.crosses.size()), hole.probe_first});
  if (!piece.wild.empty()) view.blank = blank_of(scene, index);
  for (const CutNotch& notch : piece.notches)
    view.notches.push_back({notch_outline(notch, view.outline), notch.around});
  if (view.holes.empty()) {
    view.shy_of_left = names_edge(piece, "left");
    view.shy_of_bottom = names_edge(piece, "bottom");
  }
  take_scribes(view, piece);
  take_gaps(view, scene, index);
  return view;
}

}  // namespace nook
