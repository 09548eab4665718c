// Templates in full size: a drawing cut into pages with overlap, register marks and a check bar.
#pragma once

#include <vector>

#include "sheet/drawing.h"
#include "sheet/sheet.h"

namespace nook {

/// Both sides of a join show the same strip of the drawing, this wide, mm. Chosen.
inline constexpr double kTileOverlap = 15;
/// A template that needs more pages than this is better copied from a list onto a stick. Chosen.
inline constexpr int kMostTiles = 6;

/// How a full-size drawing goes onto paper: rows from the top, columns from the left.
struct Tiling {
  int columns = 1, rows = 1;
  Vec2 window;  // mm of the drawing on each page
  Vec2 corner;  // upper left corner of the first window, so that the drawing lies in the middle

  int pages() const { return columns * rows; }
  /// The part of the drawing on one page.
  PageBox seen(int row, int column) const;
};
Tiling tiling_of(const Drawing& full_size, PaperSize paper);

/// The pages, each in paper mm, in true size: a bar of 4 in and one of 100 mm to check the printer,
/// the drawing's title, which page it is, and on each join two register marks that lie on the same
/// spot of both pages.
std::vector<Drawing> template_pages(const Drawing& full_size, PaperSize paper);

/// The part of a drawing inside a window: lines cut at its border, circles as fine lines, words
/// only where they lie inside whole.
Drawing clipped(const Drawing& drawing, const PageBox& window);

}  // namespace nook
