// How wide the columns of a table are on paper.
#pragma once

#include <vector>

#include "sheet/sheet.h"

namespace nook {

/// Free ems at the right of each cell.
inline constexpr double kCellGap = 0.8;

/// Column widths in mm that add up to at most `width`: each as wide as its longest cell where that
/// fits; else the widest give way until they do.
std::vector<double> column_widths(const SheetTable& table, double size, double width);

}  // namespace nook
