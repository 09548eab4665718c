// Words placed beside what they name, so that no two of them overlap.
#pragma once

#include <string>
#include <vector>

#include "sheet/draft.h"

namespace nook {

/// Words for one point of a drawing.
struct Label {
  std::string words;
  Vec2 about;        // the point they name, real mm
  double clear = 0;  // paper mm kept free round it; 0: they may stand right on it
  bool bold = false;
  double size = 0;  // paper mm; 0 = the draft's usual
  std::string name;
};

/// Adds every label to the layer "labels", in the order given, most important first:
/// 1. no two texts of the drawing overlap, the ones already there included;
/// 2. none covers a box of `taken`, none leaves `across` sideways where it could stay inside;
/// 3. a label that stands off its point has a thin leader to it.
/// Each takes the nearest spot that crosses fewest lines.
void place_labels(Draft& draft, const std::vector<Label>& labels, std::vector<PageBox> taken,
                  const PageBox& across);

/// Positions nearest to `wanted` (sorted) that keep `apart` and stay in [low, high] where they can.
std::vector<double> spread(const std::vector<double>& wanted, double apart, double low,
                           double high);

}  // namespace nook
