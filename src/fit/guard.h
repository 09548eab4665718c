// Feelers that keep a piece out of the room's surfaces where no contact does.
#pragma once

#include <vector>

#include "fit/joint.h"

namespace nook {

/// A piece near a surface that it must not run into; feelers look square to the surface. Where the
/// piece is notched they feel only the blocks that it stops at all the same.
struct Guard {
  int piece = 0;
  Surface surface;
  std::vector<Feeler> feelers;
};

/// Guards of every piece for every surface that it is near to, standing at `frames`.
std::vector<Guard> guards_of(const Scene& scene, Site& site, const std::vector<Frame>& frames,
                             const std::vector<Joint>& joints);

}  // namespace nook
