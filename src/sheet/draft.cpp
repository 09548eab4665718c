// Scales chosen, extents set, hatching drawn.
#include "sheet/draft.h"

#include <algorithm>
#include <cmath>

#include "base/invariant.h"
#include "base/length.h"

namespace nook {
namespace {

constexpr double kRoomRound = 1.5;  // paper mm about a finished drawing. Chosen

// Where the line n . p = offset crosses the sides of the polygon, as distances along d.
void crossings(const Polygon& polygon, Vec2 d, double offset, std::vector<double>& at) {
  const Vec2 n = left_of(d);
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec2 a = polygon[i], b = polygon[(i + 1) % polygon.size()];
    const double sa = dot(n, a) - offset, sb = dot(n, b) - offset;
    if ((sa < 0) == (sb < 0)) continue;
    const double t = sa / (sa - sb);
    at.push_back(dot(d, a + t * (b - a)));
  }
}

}  // namespace

std::string in_units(const Rounding& rounding) {
  if (rounding.unit == Unit::inch) return ", in inches";
  return rounding.unit == Unit::mm ? ", in mm" : ", in cm";
}

Draft drafted(const Canvas& canvas, const Rounding& rounding, const PageBox& real, Vec2 free) {
  require(!real.empty(), "a drawing has something to draw");
  const double across = std::max(canvas.width - free.x - 2 * kRoomRound, 10.0);
  const double up = std::max(canvas.height - free.y - 2 * kRoomRound, 10.0);
  const double scale =
      std::min(across / std::max(real.width(), 1.0), up / std::max(real.height(), 1.0));
  return drafted_at(scale, canvas, rounding);
}

Draft drafted_at(double scale, const Canvas& canvas, const Rounding& rounding) {
  Draft draft{{}, canvas, rounding};
  draft.drawing.scale = scale;
  return draft;
}

PageBox canvas_round(const Draft& draft, const PageBox& real) {
  const double half = draft.paper(draft.canvas.width - 2 * kRoomRound) / 2;
  const double middle = (real.low.x + real.high.x) / 2;
  return {{middle - half, real.low.y}, {middle + half, real.high.y}};
}

Drawing finished(Draft draft) {
  draft.drawing.extent = box_on_page(draft.drawing).grown(draft.paper(kRoomRound));
  return std::move(draft.drawing);
}

void hatch(Draft& draft, const std::string& layer, const Region& region, double angle_deg,
           double spacing) {
  const Direction turn = direction(degrees(angle_deg));
  const Vec2 d{turn.cos, turn.sin}, n = left_of(d);
  double low = 1e300, high = -1e300;
  for (Vec2 p : region.outline) low = std::min(low, dot(n, p)), high = std::max(high, dot(n, p));
  const double step = draft.paper(spacing);
  std::vector<double> at;
  for (double k = std::ceil(low / step); k * step < high; ++k) {
    at.clear();
    crossings(region.outline, d, k * step, at);
    for (const Polygon& hole : region.holes) crossings(hole, d, k * step, at);
    std::sort(at.begin(), at.end());
    for (std::size_t i = 0; i + 1 < at.size(); i += 2)
      draft.drawing.add(layer, Polyline{{at[i] * d + k * step * n, at[i + 1] * d + k * step * n},
                                        false,
                                        LineKind::thin});
  }
}

Polygon outline_of(const PageBox& box) {
  return {box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}};
}

Region region_of(const PageBox& box) {
  return {outline_of(box), {}};
}

}  // namespace nook
