// Sliding a piece into an alcove between two side walls, and what to do where it is narrower in
// front.
#pragma once

#include <optional>

#include "shop/carry.h"
#include "shop/stance.h"

namespace nook {

/// The alcove whose back is wall `back`, with a wall on each side of it.
struct Alcove {
  int back = 1;
};

/// How it gets between the side walls; nothing for what stands clear of them by more than 100 mm.
/// Wood that is drawn inside a side wall is taken to be cut away to it: a piece as it will be.
std::optional<Pass> enter_alcove(const Stance& stance, Alcove alcove, const KnownRoom& known,
                                 double sure);

}  // namespace nook
