// Panels on one sheet, lying on its long side.
#include "sheet/layout_drawing.h"

#include <fmt/format.h>

#include "sheet/dimension.h"
#include "sheet/label.h"

namespace nook {

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
    labels.push_back(
        {fmt::format("{}, {} by {}", panel.part, draft.bare(panel.width), draft.bare(panel.length)),
         0.5 * (box.low + box.high), 0, false, 0, "label " + panel.part});
  }
  hatch(draft, "waste", waste, 45, 2.5);
  place_labels(draft, labels, {}, canvas_round(draft, whole));
  return finished(std::move(draft));
}

}  // namespace nook
