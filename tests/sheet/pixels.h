// A PDF page looked at as pixels.
#pragma once

#include <string>
#include <vector>

#include "sheet/drawing.h"

namespace nook {

/// One page at 300 dots to the inch, grey, rows from the top.
struct Pixels {
  int width = 0, height = 0;
  std::vector<unsigned char> grey;

  /// Millimeters of the page in one pixel.
  static constexpr double kMillimetres = 25.4 / 300;
  bool dark(int x, int y) const { return grey[static_cast<std::size_t>(y) * width + x] < 128; }
};
Pixels pixels_of(const std::string& pdf_file, int page);

/// The box of everything dark on a page, mm, y up from its lower edge.
PageBox ink_of(const std::string& pdf_file, int page);

}  // namespace nook
