// Distances and angles between the two surfaces of a corner at one height.
#pragma once

#include "survey/view.h"

namespace nook {

/// The two surfaces of a corner at one height, on the boards where a reading was taken there.
struct Sides {
  int corner = 0;
  Height height;
  double left_board = 0, right_board = 0;
};

/// Straight between marks `first` and `second` from the real corner on its left and right wall.
Varied straight_between(View& view, const Sides& sides, const Varied& first, const Varied& second);

/// The angle between straight blades of one length laid on both surfaces from the real corner.
Varied angle_between(View& view, const Sides& sides, double blade);

}  // namespace nook
