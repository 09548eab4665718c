// Blocks on the walls as convex solids, cut into lengths where the wall bends.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "fit/joint.h"
#include "fit/separation.h"
#include "fit/site.h"

namespace nook {

/// One length of a block in one room: a prism of four sides.
struct ObstacleSolid {
  std::array<Vec3, 8> corners;  // in its frame, lower ring (w = 0) then upper
  Frame frame;

  CellSolid cell() const;
};

/// The blocks near any piece, in lengths of at most 60 mm, each straight along and up the surface:
/// right to 0.05 mm along and, 150 mm high, to 0.3 mm up for a field of sd 10 mm and reach 400 mm.
class Obstacles {
 public:
  Obstacles(const Scene& scene, Site& site, const std::vector<Frame>& frames);
  std::size_t size() const { return lengths_.size(); }
  const std::string& name(const Site& site, std::size_t index) const;
  /// One of them in one room.
  ObstacleSolid in(const Site& site, const SiteView& view, std::size_t index) const;

 private:
  struct Length {
    int wall, block;
    double from, to;  // share of the block's length
    struct Ends {
      int low, high;  // spots of the surface at the block's bottom and top
    } at_from, at_to;
  };
  void add_block(Site& site, const std::vector<Stretch>& near, int wall, int block);
  std::vector<Length> lengths_;
};

}  // namespace nook
