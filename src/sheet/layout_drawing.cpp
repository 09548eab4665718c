// Panels on one sheet, lying on its long side.
#include "sheet/layout_drawing.h"

#include <fmt/format.h>

#include <algorithm>

#include "sheet/dimension.h"
#include "sheet/label.h"
#include "sheet/text_width.h"

namespace nook {
namespace {

// A panel's name and size.
struct PanelWords {
  std::string part, size;
  std::string both() const { return part + ", " + size; }
  std::string name() const { return "label " + part; }
};

// In its middle at a size of type, on one line or the size under the name, turned where it is laid
// upright; false where none of these has room.
bool put_inside(Draft& draft, const PanelWords& words, const PageBox& box, double em) {
  const Vec2 middle = 0.5 * (box.low + box.high);
  const double across = box.high.x - box.low.x, up = box.high.y - box.low.y;
  const double wider = std::max(width_of(words.part, em), width_of(words.size, em));
  for (const bool turned : {false, true}) {
    const double along = turned ? up : across, room = turned ? across : up;
    const Vec2 half_line = 0.6 * em * (turned ? Vec2{-1, 0} : Vec2{0, 1});
    const auto put = [&](Vec2 at, const std::string& text) {
      draft.drawing.add("labels", Text{at, text, em, Align::middle, turned ? 90.0 : 0.0},
                        words.name());
    };
    if (width_of(words.both(), em) < along && room > em) return put(middle, words.both()), true;
    if (wider >= along || room <= 2.5 * em) continue;
    put(middle + half_line, words.part);
    return put(middle - half_line, words.size), true;
  }
  return false;
}

// Inside, in smaller type where it must be; else beside it.
void add_words(Draft& draft, const LaidPanel& panel, const PageBox& box,
               std::vector<Label>& labels) {
  constexpr double kSmaller = 0.7;  // as in the notes of a drawing; chosen
  const PanelWords words{
      panel.part, fmt::format("{} by {}", draft.bare(panel.width), draft.bare(panel.length))};
  for (const double em : {draft.text(), kSmaller * draft.text()})
    if (put_inside(draft, words, box, em)) return;
  labels.push_back({words.both(), 0.5 * (box.low + box.high), 0, false, 0, words.name()});
}

}  // namespace

Drawing layout_drawing(const SheetPlan& plan, int sheet, const std::string& stock,
                       const Canvas& canvas, const Rounding& rounding) {
  // The sheet's length runs across the page.
  const PageBox whole{{0, 0}, {plan.length, plan.width}};
  Draft draft = drafted(canvas, rounding, whole, {4 * canvas.text, 5 * canvas.text});
  draft.drawing.name = fmt::format("sheet-{}-{}", stock, sheet + 1);
  draft.drawing.title = fmt::format("{}: sheet {}, {} by {}", stock, sheet + 1,
                                    draft.bare(plan.width), draft.said(plan.length));
  draft.drawing.description = "Hatched: waste. The grain runs along the sheet.";
  draft.drawing.add("sheet", Patch{region_of(whole), Paint::paper, LineKind::heavy}, "sheet");
  std::vector<Label> labels;
  Region waste = region_of(whole);
  for (const LaidPanel& panel : plan.sheets[sheet]) {
    const PageBox box{{panel.y, panel.x}, {panel.y + panel.length, panel.x + panel.width}};
    waste.holes.push_back(outline_of(box));
    draft.drawing.add("panels", Patch{region_of(box), Paint::wood, LineKind::normal}, panel.part);
    add_words(draft, panel, box, labels);
  }
  hatch(draft, "waste", waste, 45, 2.5);
  place_labels(draft, labels, {}, canvas_round(draft, whole));
  return finished(std::move(draft));
}

}  // namespace nook
