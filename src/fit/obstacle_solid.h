// Blocks on a wall as convex solids, cut where the wall bends.
#pragma once

#include <string>
#include <vector>

#include "fit/separation.h"
#include "fit/site.h"

namespace nook {

struct ObstacleSolid {
  std::string name;
  int block = 0;
  CellSolid solid;  // in its frame
  Frame frame;
};

/// The blocks of a wall within `reach` of a cell, in lengths of at most 300 mm. Each follows the
/// adjusted surface at its middle to 0.05 mm for a field of sd 10 mm and reach 400 mm.
std::vector<ObstacleSolid> obstacles_near(const SiteView& view, int wall, const CellSolid& cell,
                                          const Frame& frame, double reach);

}  // namespace nook
