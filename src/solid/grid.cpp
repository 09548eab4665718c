// Boxes round outlines, compared by the step of the grid.
#include "solid/grid.h"

#include <algorithm>
#include <iterator>

namespace nook {
namespace {

// More than a grid step apart.
bool apart(const Box2& a, const Box2& b) {
  return a.low.x > b.high.x + kOutlineGrid || b.low.x > a.high.x + kOutlineGrid ||
         a.low.y > b.high.y + kOutlineGrid || b.low.y > a.high.y + kOutlineGrid;
}

std::vector<Box2> boxes_of(const Regions& regions) {
  std::vector<Box2> boxes;
  for (const Region& r : regions)
    if (!r.outline.empty()) boxes.push_back(box_of(r.outline));
  return boxes;
}

bool near(const Polygon& ring, const std::vector<Box2>& boxes) {
  return !ring.empty() &&
         std::any_of(boxes.begin(), boxes.end(),
                     [box = box_of(ring)](const Box2& other) { return !apart(box, other); });
}

}  // namespace

std::vector<Polygon> near(const std::vector<Polygon>& rings, const Regions& regions) {
  const std::vector<Box2> boxes = boxes_of(regions);
  std::vector<Polygon> found;
  std::copy_if(rings.begin(), rings.end(), std::back_inserter(found),
               [&](const Polygon& ring) { return near(ring, boxes); });
  return found;
}

bool far_apart(const Polygon& a, const Polygon& b) {
  return a.empty() || b.empty() || apart(box_of(a), box_of(b));
}

bool far_apart(const Regions& a, const Regions& b) {
  const std::vector<Box2> boxes = boxes_of(b);
  return std::none_of(a.begin(), a.end(),
                      [&](const Region& region) { return near(region.outline, boxes); });
}

}  // namespace nook
