// By the mean of the sizes.
#include "shop/measured_on.h"

#include <algorithm>

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
      const LevelTape tape(outline, bounds_of(outline).low.y + size.at.mm);
      sum += measured.mm - tape.read(outline, size.at.mm);
      ++count;
    }
  return count == 0 ? 0 : sum / count;
}

Polygon on_its_side(Polygon outline) {
  for (Vec2& p : outline) std::swap(p.x, p.y);
  return outline;
}

// More than half of the wild wood; of a piece that was not cut at all nobody can tell where it is.
bool is_on(double over, double wild) {
  return over > wild / 2 && over < wild + kFarOff;
}

// A stick as long as it was measured; a hundredth of its length at least.
void stretch(Polygon& outline, double longer) {
  const Bounds b = bounds_of(outline);
  const double share = std::max(1 + longer / (b.high.x - b.low.x), 0.01);
  for (Vec2& p : outline) p.x = b.low.x + share * (p.x - b.low.x);
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
  if (needed.stock->kind == StockKind::lumber) {
    const double longer = over(seen.widths, on.outline);
    stretch(on.outline, longer);
    on.across += longer;
  }
  return on;
}

}  // namespace nook
