// Pieces as prisms in an isometric view, and which of them hides which.
#pragma once

#include <vector>

#include "sheet/drawing.h"
#include "sheet/scene.h"

// As one looks into the corner: the left wall runs to the left, the right one to the right.

namespace nook {

/// The page's point of a point of the room, one real mm to each along the three axes.
Vec2 isometric(Vec3 p);
/// From the room towards the eye.
inline constexpr Vec3 kTowardsEye{1, 1, 1};

/// One piece in place, with its boxes in the room and on the page.
struct Prism {
  int piece = 0, step = 0;
  bool stands_out = false;
  Vec3 low, high;
  PageBox page;
};
Prism prism_of(const JobScene& scene, int piece, int step);

/// The order to paint them in: what lies behind comes first. Of pieces that hide each other in a
/// ring the furthest comes first.
std::vector<Prism> far_to_near(std::vector<Prism> prisms);

}  // namespace nook
