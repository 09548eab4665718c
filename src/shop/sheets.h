// Panels laid out on sheets: first fit, largest first, every cut from edge to edge.
#pragma once

#include <string>
#include <vector>

namespace nook {

/// A rectangle to be cut, mm: across and along its grain.
struct Panel {
  std::string part;
  double across = 0, along = 0;
};
/// Where a panel lies on its sheet: its lower left corner and what it takes of the sheet's width
/// and length. `turned`: its grain runs across the sheet.
struct LaidPanel {
  std::string part;
  double x = 0, y = 0, width = 0, length = 0;
  bool turned = false;
};
struct SheetPlan {
  double width = 0, length = 0;  // of one sheet
  std::vector<std::vector<LaidPanel>> sheets;
  std::vector<Panel> too_large;

  /// The share of what is bought that ends in no piece, 0 to 1.
  double waste() const;
};

/// 1. Every panel lies on one sheet, a kerf away from its neighbors, and can be freed by cuts right
///    through what is left.
/// 2. Grain runs along the sheet; a panel is turned only where it does not go on otherwise.
SheetPlan lay_on_sheets(std::vector<Panel> panels, double width, double length);

}  // namespace nook
