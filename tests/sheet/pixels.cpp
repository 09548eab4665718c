// pdftoppm's grey maps read.
#include "sheet/pixels.h"

#include <catch2/catch.hpp>
#include <sstream>

#include "sheet/tool.h"

namespace nook {

Pixels pixels_of(const std::string& pdf_file, int page) {
  const std::string number = std::to_string(page);
  const std::string text =
      output_of("pdftoppm -gray -r 300 -aa no -f " + number + " -l " + number + " " + pdf_file);
  std::istringstream in(text);
  std::string magic;
  int most = 0;
  Pixels pixels;
  in >> magic >> pixels.width >> pixels.height >> most;
  REQUIRE(magic == "P5");
  in.get();
  pixels.grey.assign(text.begin() + in.tellg(), text.end());
  REQUIRE(pixels.grey.size() == static_cast<std::size_t>(pixels.width) * pixels.height);
  return pixels;
}

PageBox ink_of(const std::string& pdf_file, int page) {
  const Pixels pixels = pixels_of(pdf_file, page);
  PageBox ink;
  for (int y = 0; y < pixels.height; ++y)
    for (int x = 0; x < pixels.width; ++x)
      if (pixels.dark(x, y)) {
        const double k = Pixels::kMillimetres;
        ink.take_in(Vec2{x * k, (pixels.height - y) * k});
        ink.take_in(Vec2{(x + 1) * k, (pixels.height - y - 1) * k});
      }
  return ink;
}

}  // namespace nook
