// Panels on one sheet, lying on its long side.
#include "sheet/layout_drawing.h"

#include <fmt/format.h>

#include "sheet/dimension.h"
#include "sheet/label.h"
#include "sheet/text_width.h"

namespace nook {
namespace {

// On one line where the panel is wide enough, else the size under the name.
void add_labels(const Draft& draft, const LaidPanel& panel, const PageBox& box,
                std::vector<Label>& labels) {
  const Vec2 middle = 0.5 * (box.low + box.high), line{0, draft.text()};
  const std::string name = "label " + panel.part;
  const std::string size =
      fmt::format("{} by {}", draft.bare(panel.width), draft.bare(panel.length));
  const std::string both = panel.part + ", " + size;
  if (width_of(both, draft.text()) < box.high.x - box.low.x ||
      box.high.y - box.low.y < 3 * line.y) {
    labels.push_back({both, middle, 0, false, 0, name});
    return;
  }
  labels.push_back({panel.part, middle + 0.6 * line, 0, false, 0, name});
  labels.push_back({size, middle - 0.6 * line, 0, false, 0, "size " + panel.part});
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
    add_labels(draft, panel, box, labels);
  }
  hatch(draft, "waste", waste, 45, 2.5);
  place_labels(draft, labels, {}, canvas_round(draft, whole));
  return finished(std::move(draft));
}

}  // namespace nook
