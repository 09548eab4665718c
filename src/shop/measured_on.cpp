// By the mean of the sizes.
#include "shop/measured_on.h"

#include "design/side.h"
#include "shop/cut_shape.h"
#include "shop/level_tape.h"

namespace nook {
namespace {

double wild_at(const NeededPiece& needed, EdgeSide side) {
  return needed.sides[static_cast<std::size_t>(side)].wild;
}

// How much larger than the outline the sizes are that a level tape read across it, in the mean.
double over(const std::vector<CheckedAt>& sizes, const Polygon& outline) {
  double sum = 0;
  int count = 0;
  for (const CheckedAt& size : sizes)
    for (const Length measured : size.measured) {
      const LevelTape tape(outline, box_of(outline).low.y + size.at.mm);
      sum += measured.mm - tape.read(outline, size.at.mm);
      ++count;
    }
  return count == 0 ? 0 : sum / count;
}

// More than half of the wild wood; of a piece that was not cut at all nobody can tell where it is.
bool is_on(double over, double wild) {
  return over > wild / 2 && over < wild + kFarOff;
}

void leave_on(const NeededPiece& needed, EdgeSide side, Polygon& outline) {
  const double wild = wild_at(needed, side);
  if (wild > 0) outline = moved(outline, side_of(outline, side), {wild, wild});
}

}  // namespace

MeasuredOn measured_on(const PieceAsCut& seen, const NeededPiece& needed) {
  MeasuredOn on{needed.outline};
  const double across = wild_at(needed, EdgeSide::left) + wild_at(needed, EdgeSide::right),
               up = wild_at(needed, EdgeSide::bottom) + wild_at(needed, EdgeSide::top);
  if (is_on(over(seen.widths, needed.outline), across)) {
    leave_on(needed, EdgeSide::left, on.outline);
    leave_on(needed, EdgeSide::right, on.outline);
    on.across = across;
  }
  if (is_on(over(seen.heights, on_its_side(needed.outline)), up)) {
    leave_on(needed, EdgeSide::bottom, on.outline);
    leave_on(needed, EdgeSide::top, on.outline);
    on.up = up;
  }
  return on;
}

}  // namespace nook
