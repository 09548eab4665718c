// Halls from above and rooms from the side, with a piece at its tightest.
#include "sheet/turning.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/length.h"
#include "sheet/carry_text.h"
#include "sheet/dimension.h"
#include "sheet/label.h"
#include "shop/box.h"
#include "shop/passage.h"

namespace nook {
namespace {

constexpr double kHallShown = 1.25;  // of the piece's length, beyond the turn. Chosen

// Outer corner at the origin, one hall down from it, the other to the right of it.
struct Turned {
  Vec2 end, along, in;  // the end at the left wall, along the piece, towards the inner corner
};
Turned turned(const TurnPicture& turn, double angle_deg) {
  const Direction a = direction(degrees(angle_deg));
  return {{0, -turn.length * a.sin}, {a.cos, a.sin}, {a.sin, -a.cos}};
}

Polygon outline_at(const TurnPicture& turn, double angle_deg) {
  const Turned t = turned(turn, angle_deg);
  const Vec2 far = t.end + turn.length * t.along;
  return {t.end + turn.width * t.in, far + turn.width * t.in, far, t.end};
}

void draw_halls(Draft& draft, const TurnPicture& turn, double shown) {
  draft.drawing.add("hall", Polyline{{{0, -shown}, {0, 0}, {shown, 0}}, false, LineKind::heavy},
                    "outer walls");
  draft.drawing.add(
      "hall",
      Polyline{
          {{turn.from, -shown}, {turn.from, -turn.to}, {shown, -turn.to}}, false, LineKind::heavy},
      "inner walls");
  draw(draft,
       Dimension{{0, -0.94 * shown}, {turn.from, -0.94 * shown}, 0, draft.said(turn.from), "hall"});
  draw(draft,
       Dimension{{0.94 * shown, -turn.to}, {0.94 * shown, 0}, 0, draft.said(turn.to), "hall"});
}

void draw_part(Draft& draft, const Polygon& outline, const std::string& words) {
  draft.drawing.add("piece", Patch{{outline, {}}, Paint::wood, LineKind::heavy}, "piece");
  hatch(draft, "piece", {outline, {}}, 45, 2);
  PageBox box;
  for (Vec2 p : outline) box.take_in(p);
  place_labels(draft, {{words, 0.5 * (box.low + box.high), 0, true, 0, "words"}}, {},
               canvas_round(draft, box_on_page(draft.drawing)));
}

// What a box takes in plan, held that way.
Vec2 in_plan(const Box& box, const Pass& pass) {
  switch (pass.hold) {
    case Grip::on_edge:
      return {box.length, box.thickness};
    case Grip::standing:
      return {box.width, box.thickness};
    case Grip::tipped:
      return {tipped_length(box.length, box.width, pass.raised_mm), box.thickness};
    case Grip::tipped_flat:
      return {tipped_length(box.length, box.thickness, pass.raised_mm), box.width};
    default:
      return {box.length, box.width};
  }
}

std::string spare_words(const Pass& pass, const Rounding& rounding) {
  if (!pass.spare) return "room not measured";
  const double by = pass.spare->value;
  return with_unit(millimetres(std::abs(by)), rounding) + (by < 0 ? " too large" : " to spare");
}

WayPicture picture_of(const JobScene& scene, int piece, const Pass& pass, const HallTurn& turn) {
  const Piece& it = scene.pieces[piece];
  const Vec2 plan = in_plan(box_of(it.drawn->outline, it.thickness), pass);
  const TurnPicture picture{
      fmt::format("{} round {}: {}", it.name, turn.name, how_held(pass, scene.rounding)),
      spare_words(pass, scene.rounding),
      turn.from.mm,
      turn.to.mm,
      plan.x,
      plan.y};
  return {it.name, [picture, rounding = scene.rounding](const Canvas& canvas) {
            return drawn(picture, canvas, rounding);
          }};
}

WayPicture picture_of(const JobScene& scene, int piece, const Pass& pass) {
  const Piece& it = scene.pieces[piece];
  double low = 1e300, high = -1e300;
  for (Vec3 p : solid_of(it, scene.frames[piece]))
    low = std::min(low, p.z), high = std::max(high, p.z);
  const double needs = tipping_height(high - low, it.thickness);
  const TipPicture picture{fmt::format("{}: tipped up under the ceiling", it.name),
                           spare_words(pass, scene.rounding), high - low, it.thickness,
                           needs + (pass.spare ? pass.spare->value : 0)};
  return {it.name, [picture, rounding = scene.rounding](const Canvas& canvas) {
            return drawn(picture, canvas, rounding);
          }};
}

bool is_tight(const Pass& pass) {
  return pass.spare && (pass.verdict != Verdict::fits || pass.spare->value < kTight);
}

}  // namespace

TightSpot tightest(const TurnPicture& turn) {
  TightSpot best{45, 1e300};
  const Vec2 inner{turn.from, -turn.to};
  for (double angle = 0.5; angle < 90; angle += 0.25) {
    const Turned t = turned(turn, angle);
    const double clear = dot(inner - t.end, t.in) - turn.width;
    if (clear < best.clear) best = {angle, clear};
  }
  return best;
}

Drawing drawn(const TurnPicture& turn, const Canvas& canvas, const Rounding& rounding) {
  const double shown = std::max(kHallShown * turn.length, 1.6 * std::max(turn.from, turn.to));
  Draft draft =
      drafted(canvas, rounding, {{0, -shown}, {shown, 0}}, {2 * canvas.text, 4 * canvas.text});
  draft.drawing.name = turn.title;
  draft.drawing.title = turn.title;
  draft.drawing.description =
      "The hall from above; hatched, the piece where it is tightest: " + turn.words + ".";
  draw_halls(draft, turn, shown);
  draw_part(draft, outline_at(turn, tightest(turn).angle_deg), turn.words);
  return finished(std::move(draft));
}

Drawing drawn(const TipPicture& tip, const Canvas& canvas, const Rounding& rounding) {
  const double reach = std::max(tip.high, tip.ceiling);
  Draft draft = drafted(canvas, rounding, {{-0.25 * reach, 0}, {1.1 * reach, reach}},
                        {10 * canvas.text, 4 * canvas.text});
  draft.drawing.name = tip.title;
  draft.drawing.title = tip.title;
  draft.drawing.description =
      "From the side; hatched, the piece where it is highest: " + tip.words + ".";
  for (const auto& [z, name] : {std::pair{0.0, "floor"}, std::pair{tip.ceiling, "ceiling"}})
    draft.drawing.add(
        "room", Polyline{{{-0.25 * reach, z}, {1.1 * reach, z}}, false, LineKind::heavy}, name);
  const double angle = std::atan2(tip.high, tip.thick);
  const Vec2 up{std::cos(angle), std::sin(angle)}, side{-up.y, up.x};
  const Vec2 foot{tip.thick * std::sin(angle), 0};
  const Vec2 head = foot + tip.high * up;
  const Polygon outline{foot, head, head + tip.thick * side, foot + tip.thick * side};
  const double top = tipping_height(tip.high, tip.thick);
  draft.drawing.add(
      "lying",
      Polyline{
          {{0, 0}, {tip.high, 0}, {tip.high, tip.thick}, {0, tip.thick}}, true, LineKind::dashed},
      "lying");
  draw(draft, Dimension{{-0.12 * reach, 0}, {-0.12 * reach, top}, 0, draft.said(top), "needed"});
  draw(draft,
       Dimension{
           {0.95 * reach, tip.ceiling}, {0.95 * reach, 0}, 0, draft.said(tip.ceiling), "ceiling"});
  draw_part(draft, outline, tip.words);
  return finished(std::move(draft));
}

std::vector<WayPicture> tight_passes(const JobScene& scene, const CarryAnswer& carry) {
  std::vector<WayPicture> pictures;
  std::string last;
  for (std::size_t i = 0; i < carry.pieces.size() && i < scene.pieces.size(); ++i) {
    if (carry.pieces[i].of == last) continue;  // one picture for all copies
    last = carry.pieces[i].of;
    for (const Pass& pass : carry.pieces[i].passes) {
      if (!is_tight(pass)) continue;
      if (pass.kind == Pass::Kind::ceiling)
        pictures.push_back(picture_of(scene, static_cast<int>(i), pass));
      for (const HallTurn& turn : scene.survey.turns)
        if (pass.kind == Pass::Kind::turn && turn.name == pass.name)
          pictures.push_back(picture_of(scene, static_cast<int>(i), pass, turn));
    }
  }
  return pictures;
}

}  // namespace nook
