// Weight and hands in words.
#include "sheet/lift.h"

#include <fmt/format.h>

#include "fasten/said.h"
#include "safety/lifting.h"

namespace nook {
namespace {

// As the cautions round it; what would be told as nothing is told as less than one.
std::string weight_words(double newtons, Unit unit) {
  const double one = unit == Unit::inch ? kNewtonsPerPound : kNewtonsPerKilogram;
  const Saying saying{unit};
  return newtons < 0.5 * one ? "under " + saying.load(one) : saying.load(newtons);
}

}  // namespace

std::string lift_words(const Design& design, const Piece& piece, Unit unit) {
  const auto weight = safe::weight_of(design.stock[piece.drawn->stock], piece);
  if (!weight) return safe::is_long(piece) ? "weight not known, two people" : "weight not known";
  const int hands = safe::hands_for(*weight, piece);
  return weight_words(*weight, unit) + (hands == 1   ? ", one person"
                                        : hands == 2 ? ", two people"
                                                     : fmt::format(", {} people", hands));
}

}  // namespace nook
