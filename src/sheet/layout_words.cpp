// A line for each board or sheet.
#include "sheet/layout_words.h"

#include <fmt/format.h>

#include "sheet/lengths.h"
#include "sheet/wrap.h"

namespace nook {
namespace {

std::string waste_words(double waste) {
  return fmt::format("{:.0f} in 100 is waste", 100 * waste);
}

std::string board_lines(const BoardPlan& plan, Rounding rounding) {
  std::string text;
  for (const BoardCut& board : plan.boards) {
    std::string parts;
    for (const Stick& stick : board.sticks)
      parts += fmt::format("{}{} {}", parts.empty() ? "" : ", ", stick.part,
                           bare(stick.length, rounding));
    text += indented(fmt::format("a board of {}: {}", size(board.length, rounding), parts));
  }
  for (const Stick& stick : plan.too_long)
    text += indented(fmt::format("no board is long enough for {}: {}", stick.part,
                                 size(stick.length, rounding)));
  return plan.boards.empty() ? text : text + indented(waste_words(plan.waste()));
}

std::string sheet_lines(const SheetPlan& plan, Rounding rounding) {
  std::string text;
  for (const auto& sheet : plan.sheets) {
    std::string parts;
    for (const LaidPanel& panel : sheet)
      parts += fmt::format("{}{} {} x {}{}", parts.empty() ? "" : ", ", panel.part,
                           bare(panel.width, rounding), bare(panel.length, rounding),
                           panel.turned ? " (across the grain)" : "");
    text += indented(fmt::format("a sheet of {} x {}: {}", bare(plan.width, rounding),
                                 size(plan.length, rounding), parts));
  }
  for (const Panel& panel : plan.too_large)
    text += indented(fmt::format("no sheet is large enough for {}: {} x {}", panel.part,
                                 bare(panel.across, rounding), size(panel.along, rounding)));
  return plan.sheets.empty() ? text : text + indented(waste_words(plan.waste()));
}

}  // namespace

std::string layout_words(const StockCut& stock, Rounding rounding) {
  if (stock.boards) return board_lines(*stock.boards, rounding);
  if (stock.sheets) return sheet_lines(*stock.sheets, rounding);
  return indented(fmt::format("the design does not say what {} it is sold in",
                              stock.width_mm ? "lengths" : "sheets"));
}

}  // namespace nook
