// Shadows drawn into cells, then the exact distance transform of Felzenszwalb and Huttenlocher
// 2012.
#include "safety/grid.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace nook::safe {
namespace {

constexpr double kNoSolid = 1e12;  // cells squared: farther than any window is wide

// The lower envelope of parabolas over one line of cells.
class Line {
 public:
  explicit Line(int most) : value_(most), root_(most), from_(most + 1), out_(most) {}

  template <class Get, class Put>
  void transform(int count, Get get, Put put) {
    for (int q = 0; q < count; ++q) value_[q] = get(q);
    envelope(count);
    for (int q = 0, k = 0; q < count; ++q) {
      while (from_[k + 1] < q) ++k;
      const double d = q - root_[k];
      out_[q] = d * d + value_[root_[k]];
    }
    for (int q = 0; q < count; ++q) put(q, out_[q]);
  }

 private:
  double meets(int q, int p) const {
    return ((value_[q] + double(q) * q) - (value_[p] + double(p) * p)) / (2.0 * (q - p));
  }
  void envelope(int count) {
    int k = 0;
    root_[0] = 0, from_[0] = -std::numeric_limits<double>::infinity();
    for (int q = 1; q < count; ++q) {
      double s = meets(q, root_[k]);
      while (s <= from_[k]) s = meets(q, root_[--k]);
      root_[++k] = q, from_[k] = s;
    }
    from_[k + 1] = std::numeric_limits<double>::infinity();
  }

  std::vector<double> value_;
  std::vector<int> root_;
  std::vector<double> from_, out_;
};

}  // namespace

Grid::Grid(const Air& air, Window window)
    : low_(window.low),
      columns_(1 + static_cast<int>((window.high.x - window.low.x) / kCell)),
      rows_(1 + static_cast<int>((window.high.y - window.low.y) / kCell)) {
  std::vector<char> solid(size());
  for (const Shadow& shadow : air.shadows()) {
    fill(shadow.region, solid);
    trace(shadow.region.outline, solid);
    for (const Polygon& hole : shadow.region.holes) trace(hole, solid);
  }
  measure(solid);
}

Vec2 Grid::middle(int cell) const {
  const int column = cell % columns_, row = cell / columns_;
  return low_ + kCell * Vec2{column + 0.5, row + 0.5};
}

int Grid::at(Vec2 p) const {
  const Vec2 q = (1 / kCell) * (p - low_);
  const int column = std::clamp(static_cast<int>(std::floor(q.x)), 0, columns_ - 1);
  return std::clamp(static_cast<int>(std::floor(q.y)), 0, rows_ - 1) * columns_ + column;
}

// Cells that share an edge with this one.
template <class Do>
void Grid::each_beside(int cell, Do act) const {
  const int column = cell % columns_;
  if (column > 0) act(cell - 1);
  if (column < columns_ - 1) act(cell + 1);
  if (cell >= columns_) act(cell - columns_);
  if (cell + columns_ < size()) act(cell + columns_);
}

std::vector<int> Grid::flooded(int cell, double by) const {
  std::vector<char> seen(size());
  std::vector<int> cells{cell};
  seen[cell] = 1;
  for (std::size_t i = 0; i < cells.size(); ++i)
    each_beside(cells[i], [&](int next) {
      if (!seen[next] && clear_[next] > by) seen[next] = 1, cells.push_back(next);
    });
  return cells;
}

// Run by run: the air outside is most of a window.
std::vector<char> Grid::flooded_from_border(double by) const {
  std::vector<char> reached(size());
  const auto open = [&](int c) { return !reached[c] && clear_[c] > by; };
  std::vector<int> next;
  for (int c = 0; c < columns_; ++c) next.insert(next.end(), {c, size() - columns_ + c});
  for (int r = 0; r < rows_; ++r) next.insert(next.end(), {r * columns_, (r + 1) * columns_ - 1});
  while (!next.empty()) {
    const int cell = next.back(), first = cell - cell % columns_;
    next.pop_back();
    if (!open(cell)) continue;
    int from = cell, to = cell + 1;
    while (from > first && open(from - 1)) --from;
    while (to < first + columns_ && open(to)) ++to;
    std::fill(reached.begin() + from, reached.begin() + to, 1);
    for (int beside : {from - columns_, from + columns_}) {
      if (beside < 0 || beside >= size()) continue;
      for (int c = beside; c < beside + (to - from); ++c)
        if (open(c) && (c == beside || !open(c - 1))) next.push_back(c);
    }
  }
  return reached;
}

// Row by row, between each first and second crossing of the border.
void Grid::fill(const Region& region, std::vector<char>& solid) const {
  const auto step_of = [](double x) { return std::ceil(x / kCell - 0.5); };
  const Box2 box = box_of(region.outline);
  const double last = std::min<double>(rows_, step_of(box.high.y - low_.y));
  for (int row = std::max(0, static_cast<int>(step_of(box.low.y - low_.y))); row < last; ++row) {
    for (const Stretch& chord : inside(region, low_ + Vec2{0, kCell * (row + 0.5)}, {1, 0})) {
      const double to = std::min<double>(columns_, step_of(chord.to));
      for (int column = static_cast<int>(std::max(0.0, step_of(chord.from))); column < to; ++column)
        solid[row * columns_ + column] = 1;
    }
  }
}

void Grid::trace(const Polygon& ring, std::vector<char>& solid) const {
  const Vec2 high = low_ + kCell * Vec2{double(columns_), double(rows_)};
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2 a = ring[i], d = ring[(i + 1) % ring.size()] - a;
    const int steps = 1 + static_cast<int>(norm(d) / (kCell / 2));
    for (int k = 0; k <= steps; ++k) {
      const Vec2 p = a + (double(k) / steps) * d;
      if (p.x >= low_.x && p.y >= low_.y && p.x < high.x && p.y < high.y) solid[at(p)] = 1;
    }
  }
}

// Cells to the nearest solid one of the same column, squared: once from below, once from above.
std::vector<double> Grid::upright(const std::vector<char>& solid) const {
  std::vector<double> away(size());
  for (int c = 0; c < size(); ++c)
    away[c] = solid[c] ? 0 : c < columns_ ? kNoSolid : away[c - columns_] + 1;
  for (int c = size() - columns_ - 1; c >= 0; --c)
    away[c] = std::min(away[c], away[c + columns_] + 1);
  for (double& d : away) d = d < kNoSolid ? d * d : kNoSolid;
  return away;
}

void Grid::measure(const std::vector<char>& solid) {
  const std::vector<double> square = upright(solid);
  Line line(columns_);
  clear_.resize(size());
  for (int y = 0; y < rows_; ++y)
    line.transform(
        columns_, [&](int x) { return square[y * columns_ + x]; },
        [&](int x, double d) {
          clear_[y * columns_ + x] = static_cast<float>(kCell * std::sqrt(d));
        });
}

}  // namespace nook::safe
