// Names and opposites of sides.
#include "design/side.h"

#include "base/invariant.h"

namespace nook {

const char* name_of(EdgeSide side) {
  switch (side) {
    case EdgeSide::left:
      return "left";
    case EdgeSide::right:
      return "right";
    case EdgeSide::bottom:
      return "bottom";
    case EdgeSide::top:
      return "top";
  }
  require(false, "an outline has four sides");
  return "";
}

EdgeSide opposite(EdgeSide side) {
  switch (side) {
    case EdgeSide::left:
      return EdgeSide::right;
    case EdgeSide::right:
      return EdgeSide::left;
    case EdgeSide::bottom:
      return EdgeSide::top;
    case EdgeSide::top:
      break;
  }
  return EdgeSide::bottom;
}

bool upright(EdgeSide side) {
  return side == EdgeSide::left || side == EdgeSide::right;
}

}  // namespace nook
