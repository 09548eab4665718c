// Edges left wild: wood beyond the finished line that is scribed off in the room.
#pragma once

#include <vector>

#include "fit/fit_answer.h"
#include "shop/closing.h"

namespace nook {

/// An edge that leaves the shop with wood to spare.
struct WildEdge {
  int contact = 0;       // index into Design::contacts
  EdgeRun run;           // on the drawn outline
  std::string edge;      // as the design says it
  double beyond_mm = 0;  // how far the blank goes beyond the drawn edge
};

/// The edges of a piece that are scribed in the room and not in the shop. Each gets 1/2 in beyond
/// the drawn edge, 3/4 in where the widest gap takes more than half of that, and more only where
/// 1/4 in would not be left (1/2 to 3/4 in: common practice, no source), in whole marks of the
/// job's tape; never more than its stock has.
std::vector<WildEdge> wild_edges(const Piece& piece, const Design& design, const FitAnswer& fit);

/// The drawn outline with those edges moved out.
Polygon with_wild_edges(const Piece& piece, const std::vector<WildEdge>& wild);

}  // namespace nook
