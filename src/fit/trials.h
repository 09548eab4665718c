// The design placed in the adjusted room and in every draw, with the gaps found there.
#pragma once

#include <vector>

#include "fit/joint_gaps.h"
#include "fit/tally.h"

namespace nook {

struct Trials {
  const Layout& layout;
  std::vector<SiteView> views;               // by room; 0 is the adjusted one
  std::vector<Placing> placings;             // by room
  std::vector<std::vector<JointGaps>> gaps;  // by room and joint; all spots in room 0

  ObstacleSolid obstacle(int room, std::size_t index) const {
    return layout.obstacles.in(layout.site, views[room], index);
  }
  int rooms() const { return static_cast<int>(views.size()); }
};

/// Fills the draws' fields and places everything in every room.
Trials try_all(const Layout& layout, Site& site);

}  // namespace nook
