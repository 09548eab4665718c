// Papers, and figures that stand abreast.
#include "sheet/sheet.h"

namespace nook {

std::size_t abreast(const std::vector<SheetBlock>& blocks, std::size_t first) {
  const auto* figure = std::get_if<SheetFigure>(&blocks[first]);
  if (!figure) return 1;
  const std::size_t most = figure->abreast;
  std::size_t count = 1;
  for (; count < most && first + count < blocks.size(); ++count) {
    const auto* next = std::get_if<SheetFigure>(&blocks[first + count]);
    if (!next || next->abreast != figure->abreast) break;
  }
  return count;
}

Vec2 size_of(PaperSize paper) {
  return paper == PaperSize::letter ? Vec2{215.9, 279.4} : Vec2{210, 297};
}

}  // namespace nook
