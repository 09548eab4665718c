// Boxes sorted into square bins, so that those near a point are found without looking at the rest.
#pragma once

#include <vector>

#include "solid/polygon.h"

namespace nook::safe {

class Bins {
 public:
  explicit Bins(const std::vector<Box2>& boxes);

  /// The numbers of boxes that may come within `reach` of p, ascending, each once; all that do are
  /// among them.
  std::vector<int> near(Vec2 p, double reach) const;
  /// A reach within which everything lies, from p.
  double farthest(Vec2 p) const;

 private:
  int column(double x) const;
  int row(double y) const;

  Box2 all_;
  int columns_ = 0, rows_ = 0;
  std::vector<std::vector<int>> bins_;  // row by row
};

}  // namespace nook::safe
