// The air of a window in square cells: how far each is from the nearest solid, roughly but at once.
#pragma once

#include <vector>

#include "safety/air.h"

namespace nook::safe {

/// Chosen: a quarter inch, so that a window of a whole wall has some hundred thousand cells.
inline constexpr double kCell = 6;  // mm

class Grid {
 public:
  Grid(const Air& air, Window window);

  int size() const { return columns_ * rows_; }
  Vec2 middle(int cell) const;
  /// The cell that holds p, or the nearest one.
  int at(Vec2 p) const;
  /// Distance from the middle to the nearest solid, mm: within one kCell of the true one.
  double clear(int cell) const { return clear_[cell]; }
  /// The cells reached from `cell` through cells that are clear by more than `by`.
  std::vector<int> flooded(int cell, double by) const;
  /// By cell, whether it is reached so from the border.
  std::vector<char> flooded_from_border(double by) const;

 private:
  void fill(const Region& region, std::vector<char>& solid) const;
  void trace(const Polygon& ring, std::vector<char>& solid) const;
  std::vector<double> upright(const std::vector<char>& solid) const;
  void measure(const std::vector<char>& solid);

  template <class Do>
  void each_beside(int cell, Do act) const;

  Vec2 low_;
  int columns_, rows_;
  std::vector<float> clear_;
};

}  // namespace nook::safe
