// Notches, cutouts and scribe lines in full size.
#include "sheet/template.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sheet/dimension.h"
#include "sheet/draft.h"
#include "sheet/full_size.h"
#include "sheet/label.h"
#include "sheet/text_width.h"

namespace nook {
namespace {

constexpr double kRound = 25;  // mm of the outline shown round a notch. Chosen
constexpr double kCross = 8;   // mm by which a center's cross stands beyond a cutout. Chosen
constexpr Canvas kFullSize{0, 0, 4};

Draft full_size(const std::string& name, const std::string& title, const Rounding& rounding) {
  Draft draft = drafted_at(1, kFullSize, rounding);
  draft.drawing.name = name;
  draft.drawing.title = title;
  draft.drawing.description = "Full size, seen from the front of the piece.";
  return draft;
}

void outline_in(Draft& draft, const PieceView& piece, const PageBox& window) {
  Drawing whole;
  whole.add("outline", Polyline{piece.outline, true, LineKind::normal}, piece.name);
  append(draft.drawing, clipped(whole, window), {0, 0});
}

// Words for the middle of a box, beside whatever is drawn there.
void say(Draft& draft, const std::string& words, Vec2 about, const PageBox& across) {
  place_labels(draft, {{words, about, 0, false, 0, "words"}}, {}, across);
}

Drawing notch_template(const PieceView& piece, const PieceNotch& notch, const Rounding& rounding) {
  const PageBox box = box_round(notch.polygon), window = box.grown(kRound);
  Draft draft = full_size(piece.name + " notch",
                          fmt::format("{}: notch for {}", piece.name, notch.around), rounding);
  outline_in(draft, piece, window);
  draft.drawing.add("cut away", Polyline{notch.polygon, true, LineKind::dashed}, "notch");
  hatch(draft, "cut away", {notch.polygon, {}}, 45, 3);
  draw(draft,
       Dimension{
           {box.high.x, box.low.y}, {box.low.x, box.low.y}, 12, draft.said(box.width()), "width"});
  draw(
      draft,
      Dimension{
          {box.low.x, box.low.y}, {box.low.x, box.high.y}, 10, draft.said(box.height()), "height"});
  say(draft, "cut away", 0.5 * (box.low + box.high), window);
  return finished(std::move(draft));
}

std::string place_words(const PieceView& piece, Vec2 at, const Draft& draft) {
  const PageBox whole = box_round(piece.outline);
  return fmt::format("center {} from {} edge, {} from {} edge",
                     draft.said(piece.shy_of_left ? whole.high.x - at.x : at.x - whole.low.x),
                     piece.shy_of_left ? "right" : "left",
                     draft.said(piece.shy_of_bottom ? whole.high.y - at.y : at.y - whole.low.y),
                     piece.shy_of_bottom ? "top" : "bottom");
}

Drawing cutout_template(const PieceView& piece, const Cutout& cutout, const Rounding& rounding) {
  const PageBox box = box_round(cutout.outline);
  const Vec2 middle = cutout.centre.value_or(0.5 * (box.low + box.high));
  Draft draft =
      full_size(piece.name + " " + cutout.name, piece.name + ": " + cutout.name, rounding);
  if (cutout.centre && cutout.diameter)
    draft.drawing.add("cutout",
                      Circle{middle, cutout.diameter->mm / 2, Paint::none, LineKind::normal},
                      cutout.name);
  else
    draft.drawing.add("cutout", Polyline{cutout.outline, true, LineKind::normal}, cutout.name);
  draft.drawing.add(
      "center",
      Polyline{
          {{box.low.x - kCross, middle.y}, {box.high.x + kCross, middle.y}}, false, LineKind::thin},
      "level through the center");
  draft.drawing.add(
      "center",
      Polyline{
          {{middle.x, box.low.y - kCross}, {middle.x, box.high.y + kCross}}, false, LineKind::thin},
      "upright through the center");
  say(draft, "TOP", {middle.x, box.high.y + kCross}, box.grown(kRound));
  const double wide = std::max(box.width(), 90.0);
  double y = box.low.y - kCross - draft.text();
  for (const std::string& line :
       lines_within(place_words(piece, middle, draft), draft.text(), wide)) {
    draft.drawing.add("words", Text{{middle.x, y}, line, draft.text(), Align::middle, 0, false});
    y -= 1.3 * draft.text();
  }
  return finished(std::move(draft));
}

Drawing scribe_template(const PieceView& piece, const PieceScribe& scribe,
                        const Rounding& rounding) {
  const PageBox window = box_round(scribe.line).grown(kRound);
  Draft draft = full_size(piece.name + " scribe", piece.name + ": " + scribe.words, rounding);
  outline_in(draft, piece, window);
  draft.drawing.add("scribe", Polyline{scribe.line, false, LineKind::heavy}, scribe.words);
  return finished(std::move(draft));
}

}  // namespace

std::vector<Drawing> templates_of(const PieceView& piece, const Rounding& rounding) {
  std::vector<Drawing> all;
  for (const PieceNotch& notch : piece.notches)
    all.push_back(notch_template(piece, notch, rounding));
  for (const Cutout& cutout : piece.cutouts)
    all.push_back(cutout_template(piece, cutout, rounding));
  for (const PieceScribe& scribe : piece.scribes)
    all.push_back(scribe_template(piece, scribe, rounding));
  return all;
}

}  // namespace nook
