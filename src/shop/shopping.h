// What to buy for a design besides its stock: screws, shims, trim, filler, blades.
#pragma once

#include <string>
#include <vector>

#include "fasten/drill.h"
#include "fit/fit_answer.h"

namespace nook {

/// One line of the shopping list.
struct Purchase {
  enum class Kind { screw, shim, trim, filler, caulk, scribe_blade };
  Kind kind = Kind::screw;
  std::string name;      // of a screw: "#10 wood screw"; else what it is for
  int count = 0;         // screws; pairs of shims; 0 where the length tells
  double length_mm = 0;  // of one screw; of all trim, filler or caulk together
  double width_mm = 0;   // of trim; the widest gap of filler
};

/// Screws by kind and length; shims, trim, filler and caulk by the contacts that ask for them,
/// shims and filler only where a gap is left; a blade where an edge is scribed or a notch is cut.
std::vector<Purchase> shopping(const Design& design, const FitAnswer& fit,
                               const DrillAnswer* drill);

}  // namespace nook
