// What stands out of a wall: baseboard, shoe and obstacles, as blocks that follow its surface.
#pragma once

#include <string>
#include <vector>

#include "room/survey.h"

namespace nook {

/// A block on one wall, between two readings along it, two heights and two distances out of the
/// surface. Its front may slope: it stands `out_to + slope (h - height.from)` out at height h.
struct Block {
  struct Bound {
    double at = 0;
    bool from_line = false;  // a height that counts from the level line, else from the floor
  };
  std::string name;                     // "left wall baseboard"
  double along_from = 0, along_to = 0;  // readings from the real corner; to may be infinite
  bool from_right = false;
  Bound height_from, height_to;
  double out_from = 0, out_to = 0;  // out_from is deep in the wall unless air is behind it
  double slope = 0;
  bool board = false;  // part of the baseboard or its shoe
};

/// The blocks of a wall that reach into the room, board first. What lies wholly inside the wall
/// (a pipe, a cable) is none.
std::vector<Block> blocks_of(const Wall& wall);

/// Whether a name means a wall or what stands on it: "left wall" and "left wall outlet" are on the
/// left wall; the wall "left wall 2" is another.
bool is_on(const std::string& name, const std::string& wall);

}  // namespace nook
