// Notches, cutouts and scribe lines in full size.
#include "sheet/template.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sheet/cut_text.h"
#include "sheet/dimension.h"
#include "sheet/draft.h"
#include "sheet/full_size.h"
#include "sheet/text_width.h"

namespace nook {
namespace {

constexpr double kRound = 15;  // mm of the outline shown round a notch. Chosen
constexpr double kLeans = 6;   // mm by which a scribed edge may lean at a notch. Chosen
constexpr double kSame = 0.4;  // mm: sizes closer than that are one
constexpr double kCross = 8;   // mm by which a center's cross stands beyond a cutout. Chosen
constexpr Canvas kFullSize{0, 0, 4};

Draft full_size(const std::string& name, const std::string& title, const Rounding& rounding) {
  Draft draft = drafted_at(1, kFullSize, rounding);
  draft.drawing.name = name;
  draft.drawing.title = title;
  draft.drawing.description = "Full size, seen from the front of the piece.";
  return draft;
}

// The finished outline, and dashed the blank's.
void lines_in(Draft& draft, const PieceView& piece, const PageBox& window) {
  Drawing whole;
  whole.add("outline", Polyline{piece.outline, true, LineKind::normal}, piece.name);
  if (!piece.blank.empty())
    whole.add("blank", Polyline{piece.blank, true, LineKind::dashed}, "blank");
  append(draft.drawing, clipped(whole, window), {0, 0});
}

// The notch with the wild wood of the blank beside it: what comes off on the bench.
PageBox on_the_blank(const PieceView& piece, const PageBox& notch) {
  if (piece.blank.empty()) return notch;
  const PageBox blank = box_round(piece.blank), done = box_round(piece.outline);
  PageBox all = notch;
  if (notch.low.x < done.low.x + kLeans) all.low.x = blank.low.x;
  if (notch.high.x > done.high.x - kLeans) all.high.x = blank.high.x;
  if (notch.low.y < done.low.y + kLeans) all.low.y = blank.low.y;
  if (notch.high.y > done.high.y - kLeans) all.high.y = blank.high.y;
  return all;
}

// A notch under way: what is cut, and on which side of it the wood is.
struct NotchDraft {
  Draft draft;
  PageBox box, cut;  // of the finished piece, and of the blank
  double wood;       // +1 to the right of it, -1 to the left

  double beside(double mm) const { return wood > 0 ? cut.low.x - mm : cut.high.x + mm; }
};

void say(NotchDraft& on, const std::string& words, Vec2 at, double turn_deg, bool bold = false) {
  on.draft.drawing.add("words", Text{at, words, on.draft.text(), Align::middle, turn_deg, bold},
                       words);
}

// Names each edge that the notch opens to, where a ruler is laid on, and which way is up.
void say_edges(NotchDraft& on, const PieceView& piece) {
  const PageBox edges = box_round(piece.blank.empty() ? piece.outline : piece.blank);
  const std::string after = piece.blank.empty() ? " edge" : " edge of the blank";
  const Vec2 middle = 0.5 * (on.box.low + on.box.high);
  const double wide = 0.5 * width_of("bottom" + after, on.draft.text()) + 3;
  const double level = on.wood > 0 ? on.box.high.x + wide : on.box.low.x - wide;
  if (on.cut.low.x < edges.low.x + kLeans) say(on, "left" + after, {on.beside(4), middle.y}, 90);
  if (on.cut.high.x > edges.high.x - kLeans) say(on, "right" + after, {on.beside(4), middle.y}, 90);
  if (on.cut.low.y < edges.low.y + kLeans) say(on, "bottom" + after, {level, on.cut.low.y - 4}, 0);
  if (on.cut.high.y > edges.high.y - kLeans) say(on, "top" + after, {level, on.cut.high.y + 4}, 0);
  say(on, "cut away", middle, on.box.height() > on.box.width() ? 90 : 0);
  say(on, "TOP \xE2\x86\x92, seen from the front",
      {on.wood > 0 ? on.box.high.x + 8 : on.box.low.x - 8, middle.y}, 90, true);
}

void measure_width(NotchDraft& on, const PageBox& of, double off) {
  draw(on.draft,
       Dimension{
           {of.high.x, of.low.y}, of.low, off, rounded_up(of.width(), on.draft.rounding), "width"});
}
void measure_height(NotchDraft& on, const PageBox& of, double off) {
  const Vec2 low{on.beside(0), of.low.y}, high{low.x, of.high.y};
  if (on.wood < 0) off += 7;  // the words stand to the left of their line, where the edge is named
  draw(on.draft, Dimension{on.wood > 0 ? low : high, on.wood > 0 ? high : low, off,
                           rounded_up(of.height(), on.draft.rounding), "height"});
}

// Hatched: the notch in the finished piece, and beside it what is wild of the blank.
void hatch_notch(Draft& draft, const Polygon& notch, const PageBox& box, const PageBox& cut) {
  draft.drawing.add("cut away", Polyline{notch, true, LineKind::dashed}, "notch");
  hatch(draft, "cut away", {notch, {}}, 45, 3);
  for (const PageBox& wild : {PageBox{{cut.low.x, box.low.y}, {box.low.x, box.high.y}},
                              PageBox{{box.high.x, box.low.y}, {cut.high.x, box.high.y}},
                              PageBox{{cut.low.x, cut.low.y}, {cut.high.x, box.low.y}},
                              PageBox{{cut.low.x, box.high.y}, {cut.high.x, cut.high.y}}})
    if (wild.width() > kSame && wild.height() > kSame)
      hatch(draft, "left wild", region_of(wild), 135, 3);
}

Drawing notch_template(const PieceView& piece, const PieceNotch& notch, const Rounding& rounding) {
  const PageBox box = box_round(notch.polygon), whole = box_round(piece.outline);
  NotchDraft on{full_size(piece.name + " notch",
                          fmt::format("{}: notch for {}", piece.name, notch.around), rounding),
                box, on_the_blank(piece, box),
                whole.high.x - box.high.x > box.low.x - whole.low.x ? 1.0 : -1.0};
  lines_in(on.draft, piece, on.cut.grown(kRound));
  hatch_notch(on.draft, notch.polygon, box, on.cut);
  measure_width(on, box, 11 + box.low.y - on.cut.low.y);
  measure_height(on, box, 11);
  if (on.cut.width() > box.width() + kSame) measure_width(on, on.cut, 18);
  if (on.cut.height() > box.height() + kSame) measure_height(on, on.cut, 18);
  say_edges(on, piece);
  return finished(std::move(on.draft));
}

Vec2 middle_of(const Cutout& cutout) {
  const PageBox box = box_round(cutout.outline);
  return cutout.centre.value_or(0.5 * (box.low + box.high));
}

std::string place_words(const PieceView& piece, const std::string& name, Vec2 at,
                        const Draft& draft) {
  const PageBox whole = box_round(piece.outline);
  return fmt::format("{}: center {} from {} edge, {} from {} edge", name,
                     draft.said(piece.shy_of_left ? whole.high.x - at.x : at.x - whole.low.x),
                     piece.shy_of_left ? "right" : "left",
                     draft.said(piece.shy_of_bottom ? whole.high.y - at.y : at.y - whole.low.y),
                     piece.shy_of_bottom ? "top" : "bottom");
}

bool same_size(const Cutout& a, const Cutout& b) {
  return a.diameter && b.diameter && std::abs(a.diameter->mm - b.diameter->mm) < kSame;
}

// Cutouts of one size share a template; its words say where each of them is.
using Alike = std::vector<Cutout>;
std::vector<Alike> alike(const std::vector<Cutout>& cutouts) {
  std::vector<Alike> all;
  for (const Cutout& cutout : cutouts) {
    const auto known = std::find_if(
        all.begin(), all.end(), [&](const Alike& those) { return same_size(those[0], cutout); });
    if (known == all.end())
      all.push_back({cutout});
    else
      known->push_back(cutout);
  }
  return all;
}

void cross_lines(Draft& draft, const PageBox& box, Vec2 middle) {
  const auto line = [&](Vec2 from, Vec2 to, const char* name) {
    draft.drawing.add("center", Polyline{{from, to}, false, LineKind::thin}, name);
  };
  line({box.low.x - kCross, middle.y}, {box.high.x + kCross, middle.y}, "level through the center");
  line({middle.x, box.low.y - kCross}, {middle.x, box.high.y + kCross},
       "upright through the center");
  draft.drawing.add("words", Text{{middle.x, box.high.y + kCross + 0.8 * draft.text()},
                                  "TOP",
                                  draft.text(),
                                  Align::middle,
                                  0,
                                  true});
}

Drawing cutout_template(const PieceView& piece, const Alike& cutouts, const Rounding& rounding) {
  const Cutout& cutout = cutouts.front();
  const PageBox box = box_round(cutout.outline);
  const Vec2 middle = middle_of(cutout);
  std::vector<std::string> names;
  for (const Cutout& each : cutouts) names.push_back(each.name);
  const std::string title = fmt::format("{}: {}", piece.name, fmt::join(names, ", "));
  Draft draft = full_size(piece.name + " " + cutout.name, title, rounding);
  if (cutout.centre && cutout.diameter)
    draft.drawing.add("cutout",
                      Circle{middle, cutout.diameter->mm / 2, Paint::none, LineKind::normal},
                      cutout.name);
  else
    draft.drawing.add("cutout", Polyline{cutout.outline, true, LineKind::normal}, cutout.name);
  cross_lines(draft, box, middle);
  // To the left of the middle, so that a template in two columns shows them whole.
  const double wide = std::max(box.width() / 2, 80.0);
  double y = box.low.y - kCross - draft.text();
  for (const Cutout& each : cutouts)
    for (const std::string& line :
         lines_within(place_words(piece, each.name, middle_of(each), draft), draft.text(), wide)) {
      draft.drawing.add("words", Text{{middle.x - 4, y}, line, draft.text(), Align::end, 0, false});
      y -= 1.3 * draft.text();
    }
  return finished(std::move(draft));
}

Drawing scribe_template(const PieceView& piece, const PieceScribe& scribe,
                        const Rounding& rounding) {
  const PageBox window = box_round(scribe.line).grown(kRound);
  Draft draft = full_size(piece.name + " scribe", piece.name + ": " + scribe.words, rounding);
  lines_in(draft, piece, window);
  draft.drawing.add("scribe", Polyline{scribe.line, false, LineKind::heavy}, scribe.words);
  return finished(std::move(draft));
}

}  // namespace

std::vector<Drawing> templates_of(const PieceView& piece, const Rounding& rounding) {
  std::vector<Drawing> all;
  for (const PieceNotch& notch : piece.notches)
    all.push_back(notch_template(piece, notch, rounding));
  for (const Alike& cutouts : alike(piece.cutouts))
    all.push_back(cutout_template(piece, cutouts, rounding));
  for (const PieceScribe& scribe : piece.scribes)
    all.push_back(scribe_template(piece, scribe, rounding));
  return all;
}

}  // namespace nook
