// Plumb lines and three diagonals by the law of cosines.
#include "exact_corner.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "adapted.h"

namespace nook::test {

std::string corner_room(double degrees) {
  constexpr double in = kMillimetresPerInch;
  std::string text = "units = \"inch\"\n[flatness]\nsd = \"0\"\n";
  for (const char* wall : {"left", "right"}) {
    text += fmt::format("[[wall]]\nname = \"{}\"\nlength = \"96\"\n", wall);
    for (const int at : {20, 70})
      text += fmt::format(
          "[[wall.plumb]]\nat = \"{}\"\nline = [[\"12\", {}], [\"40\", {}], [\"88\", {}]]\n", at,
          exact(60), exact(60), exact(60));
  }
  text += "[[corner]]\nwalls = [\"left\", \"right\"]\nheight = \"0\"\ndiagonals = [";
  for (const auto& [a, b] : {std::pair{36.0, 48.0}, {48.0, 36.0}, {60.0, 60.0}})
    text +=
        fmt::format("[{}, {}, {}],\n", exact(a * in), exact(b * in),
                    exact(in * std::sqrt(a * a + b * b -
                                         2 * a * b * std::cos(degrees * std::numbers::pi / 180))));
  return text + "]\n[level_line]\nby = \"laser\"\n";
}

}  // namespace nook::test
