// pieces.toml: the pieces as cut and measured in the shop.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "base/length.h"
#include "base/notation.h"

namespace nook {

/// A width at a height, or a height at a distance from the left.
struct CheckedAt {
  Length at;
  std::vector<Length> measured;           // the same thing once or more
  std::vector<std::optional<Length>> sd;  // of each of them, as stated; empty = of none
  Place place;
};
struct NotchAsCut {
  std::string corner;  // "lower left", "lower right", "upper left", "upper right"
  std::optional<Length> width, height;
  Place place;
};
struct PieceAsCut {
  std::string part;
  bool show_face_up = true;
  std::vector<CheckedAt> widths, heights;
  std::vector<CheckedAt> diagonals;  // lower left to upper right, then the other; `at` unused
  std::vector<NotchAsCut> notches;
  Place place;
};
/// The whole of pieces.toml.
struct PiecesAsCut {
  Unit units = Unit::inch;
  std::vector<PieceAsCut> pieces;
};

}  // namespace nook
