// Blocks on the walls as convex solids, cut into lengths where the wall bends.
#pragma once

#include <string>
#include <vector>

#include "fit/joint.h"
#include "fit/separation.h"
#include "fit/site.h"

namespace nook {

struct ObstacleSolid {
  std::string name;
  CellSolid solid;  // in its frame
  Frame frame;
};

/// The blocks near any piece, in lengths of at most 60 mm, each straight along and up the surface:
/// right to 0.05 mm along and, 150 mm high, to 0.3 mm up for a field of sd 10 mm and reach 400 mm.
class Obstacles {
 public:
  Obstacles(const Scene& scene, Site& site, const std::vector<Frame>& frames);
  /// In one room, always in the same order; those not `wanted` are left empty (none given: all).
  std::vector<ObstacleSolid> in(const Site& site, const SiteView& view,
                                const std::vector<char>& wanted) const;

 private:
  struct Length {
    int wall, block;
    double from, to;  // share of the block's length
    struct Ends {
      int low, high;  // spots of the surface at the block's bottom and top
    } at_from, at_to;
  };
  void add_block(Site& site, const std::vector<Stretch>& near, int wall, int block);
  ObstacleSolid solid(const Site& site, const SiteView& view, const Length& length) const;
  std::vector<Length> lengths_;
};

}  // namespace nook
