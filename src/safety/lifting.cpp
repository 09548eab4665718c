// Volume times density; weight and length to hands.
#include "safety/lifting.h"

#include <algorithm>
#include <cmath>

#include "fasten/said.h"
#include "safety/limit.h"
#include "solid/polygon.h"

namespace nook::safe {
namespace {

constexpr double kLongForOne = 2100;  // mm. Chosen

}  // namespace

std::optional<double> weight_of(const Stock& stock, const Piece& piece) {
  if (!stock.density && !stock.gravity) return {};
  const double density = stock.density ? *stock.density : *stock.gravity * kDensityOfGravity;
  double wood = std::abs(signed_area(piece.drawn->outline));
  for (const Cutout& cutout : piece.drawn->cutouts) wood -= std::abs(signed_area(cutout.outline));
  constexpr double kCubicMeter = 1e9;  // mm^3
  return density * wood * piece.thickness / kCubicMeter * kNewtonsPerKilogram;
}

bool is_long(const Piece& piece) {
  const Box2 box = box_of(piece.drawn->outline);
  return std::max(box.high.x - box.low.x, box.high.y - box.low.y) > kLongForOne;
}

int hands_for(double weight, const Piece& piece) {
  const int by_weight = static_cast<int>(std::ceil(weight / newtons(Of::one_person)));
  return std::max(by_weight, is_long(piece) ? 2 : 1);
}

}  // namespace nook::safe
