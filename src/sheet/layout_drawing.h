// Sheets of stock with the panels laid out on them.
#pragma once

#include "sheet/draft.h"
#include "shop/sheets.h"

namespace nook {

/// One sheet, its panels where they are to be cut; hatched: waste. Arrow: the grain.
Drawing layout_drawing(const SheetPlan& plan, int sheet, const std::string& stock,
                       const Canvas& canvas, const Rounding& rounding);

}  // namespace nook
