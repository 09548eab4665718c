// Blocks on the walls as convex solids, cut into lengths where the wall bends.
#pragma once

#include <string>
#include <vector>

#include "fit/separation.h"
#include "fit/site.h"

namespace nook {

struct ObstacleSolid {
  std::string name;
  CellSolid solid;  // in its frame
  Frame frame;
};

/// All blocks in lengths of at most 300 mm. Each length is straight and follows the surface at its
/// middle: to 0.05 mm for a field of sd 10 mm and reach 400 mm.
class Obstacles {
 public:
  explicit Obstacles(Site& site);
  /// In one room, always in the same order.
  std::vector<ObstacleSolid> in(const Site& site, const SiteView& view) const;

 private:
  struct Length {
    int wall, block;
    double from, to;  // share of the block's length
    int spot;
  };
  ObstacleSolid solid(const Site& site, const SiteView& view, const Length& length) const;
  std::vector<Length> lengths_;
};

}  // namespace nook
