// Free rectangles, split in two by each panel laid.
#include "shop/sheets.h"

#include <algorithm>

#include "shop/boards.h"

namespace nook {
namespace {

constexpr double kHair = 1e-6;  // mm of rounding that is no overlap. Chosen

struct Free {
  double x, y, width, length;
};

struct Sheet {
  std::vector<Free> free;
  std::vector<LaidPanel> laid;
};

bool holds(const Free& room, double width, double length) {
  return width <= room.width + kHair && length <= room.length + kHair;
}

// The smallest free rectangle that holds it; none = free.size().
size_t tightest(const Sheet& sheet, double width, double length) {
  size_t best = sheet.free.size();
  const auto area = [&](size_t k) { return sheet.free[k].width * sheet.free[k].length; };
  for (size_t k = 0; k < sheet.free.size(); ++k)
    if (holds(sheet.free[k], width, length) && (best == sheet.free.size() || area(k) < area(best)))
      best = k;
  return best;
}

void keep(std::vector<Free>& free, const Free& room) {
  if (room.width > kHair && room.length > kHair) free.push_back(room);
}

// The panel lies in the lower left corner; the longer cut is made along the side that leaves the
// larger whole rectangle.
void split(Sheet& sheet, size_t k, double width, double length) {
  const Free room = sheet.free[k];
  sheet.free.erase(sheet.free.begin() + static_cast<std::ptrdiff_t>(k));
  const double beside = room.width - width - kKerf, above = room.length - length - kKerf;
  const bool across = beside * room.length < above * room.width;
  keep(sheet.free, {room.x + width + kKerf, room.y, beside, across ? length : room.length});
  keep(sheet.free, {room.x, room.y + length + kKerf, across ? room.width : width, above});
}

bool lay_on(Sheet& sheet, const Panel& panel, bool turned) {
  const double width = turned ? panel.along : panel.across;
  const double length = turned ? panel.across : panel.along;
  const size_t k = tightest(sheet, width, length);
  if (k == sheet.free.size()) return false;
  sheet.laid.push_back({panel.part, sheet.free[k].x, sheet.free[k].y, width, length, turned});
  split(sheet, k, width, length);
  return true;
}

bool lay_somewhere(std::vector<Sheet>& sheets, const Panel& panel, const Free& whole) {
  for (const bool turned : {false, true}) {
    for (Sheet& sheet : sheets)
      if (lay_on(sheet, panel, turned)) return true;
    Sheet fresh{{whole}, {}};
    if (lay_on(fresh, panel, turned)) return sheets.push_back(std::move(fresh)), true;
  }
  return false;
}

}  // namespace

double SheetPlan::waste() const {
  double used = 0;
  for (const auto& sheet : sheets)
    for (const LaidPanel& panel : sheet) used += panel.width * panel.length;
  return sheets.empty() ? 0 : 1 - used / (static_cast<double>(sheets.size()) * width * length);
}

SheetPlan lay_on_sheets(std::vector<Panel> panels, double width, double length) {
  SheetPlan plan{width, length, {}, {}};
  std::stable_sort(panels.begin(), panels.end(), [](const Panel& a, const Panel& b) {
    return a.across * a.along > b.across * b.along;
  });
  std::vector<Sheet> sheets;
  for (const Panel& panel : panels)
    if (!lay_somewhere(sheets, panel, {0, 0, width, length})) plan.too_large.push_back(panel);
  for (Sheet& sheet : sheets) plan.sheets.push_back(std::move(sheet.laid));
  return plan;
}

}  // namespace nook
