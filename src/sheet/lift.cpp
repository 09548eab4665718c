// Volume times density.
#include "sheet/lift.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "fasten/said.h"
#include "safety/holding.h"
#include "safety/limit.h"
#include "solid/polygon.h"

namespace nook {
namespace {

constexpr double kLongForOne = 2100;  // mm. Chosen

double longest_side(const Polygon& outline) {
  Vec2 low{1e300, 1e300}, high{-1e300, -1e300};
  for (Vec2 p : outline) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  return std::max(high.x - low.x, high.y - low.y);
}

// As the cautions round it; what would be told as nothing is told as less than one.
std::string weight_words(double newtons, Unit unit) {
  const double one = unit == Unit::inch ? kNewtonsPerPound : kNewtonsPerKilogram;
  const Saying saying{unit};
  return newtons < 0.5 * one ? "under " + saying.load(one) : saying.load(newtons);
}

// Kilograms as drawn, cutouts taken out; nothing where the stock states neither density nor
// gravity.
std::optional<double> weight_kg(const Design& design, const Piece& piece) {
  const Stock& stock = design.stock[piece.drawn->stock];
  double density = 0;
  if (stock.density)
    density = *stock.density;
  else if (stock.gravity)
    density = *stock.gravity * safe::kDensityOfGravity;
  else
    return std::nullopt;
  double area = std::abs(signed_area(piece.drawn->outline));
  for (const Cutout& cutout : piece.drawn->cutouts) area -= std::abs(signed_area(cutout.outline));
  return area * piece.thickness * 1e-9 * density;
}

}  // namespace

std::string lift_words(const Design& design, const Piece& piece, Unit unit) {
  const std::optional<double> kg = weight_kg(design, piece);
  const bool is_long = longest_side(piece.drawn->outline) > kLongForOne;
  if (!kg) return is_long ? "weight not known, two people" : "weight not known";
  const double weight = *kg * kNewtonsPerKilogram;
  const bool heavy = weight > newtons(Of::one_person);
  return weight_words(weight, unit) + (heavy || is_long ? ", two people" : ", one person");
}

}  // namespace nook
