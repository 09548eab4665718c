// A dense matrix as plain numbers, so that no header needs a matrix library.
#pragma once

#include <vector>

namespace nook {

/// Row after row.
struct Dense {
  int rows = 0, cols = 0;
  std::vector<double> cells;

  Dense() = default;
  Dense(int r, int c) : rows(r), cols(c), cells(static_cast<std::size_t>(r) * c) {}
  double& operator()(int r, int c) { return cells[static_cast<std::size_t>(r) * cols + c]; }
  double operator()(int r, int c) const { return cells[static_cast<std::size_t>(r) * cols + c]; }
  double* row(int r) { return cells.data() + static_cast<std::size_t>(r) * cols; }
  const double* row(int r) const { return cells.data() + static_cast<std::size_t>(r) * cols; }
};

}  // namespace nook
