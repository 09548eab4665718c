// Flooded cells find the openings; a best-first search finds the largest circle in each.
#include "safety/left_opening.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <queue>

namespace nook::safe {
namespace {

constexpr double kGood = 0.001;    // mm of radius; far under what a saw follows
constexpr double kRim = 0.5;       // mm: what is this near to the circle bounds it; chosen
constexpr double kOpposite = 150;  // degrees between two that hold a circle; chosen

struct Square {
  Vec2 middle;
  double half = 0;   // diagonal
  double clear = 0;  // exact, at the middle
  double most = 0;   // no point of the square is clearer
  friend bool operator<(const Square& a, const Square& b) { return a.most < b.most; }
};

// A point x is no farther from the solids than the lesser of |x - p| and |x - q| for any two spots
// p and q on them; the root mean square of both bounds that, and is least for opposite spots. p is
// the spot nearest to the middle.
double most_clear(const Air& air, const Square& square, Vec2 nearest) {
  double most = square.clear + square.half;
  for (Vec2 spot : air.rim(square.middle, square.clear + 2 * square.half)) {
    const Vec2 apart = spot - nearest, off = square.middle - 0.5 * (spot + nearest);
    const double reach = std::sqrt(dot(off, off)) + square.half;
    most = std::min(most, std::sqrt(reach * reach + dot(apart, apart) / 4));
  }
  return most;
}

Square square_at(const Air& air, Vec2 middle, double half) {
  const Touch touch = air.nearest(middle);
  Square square{middle, half, touch.distance, 0};
  square.most = most_clear(air, square, touch.at);
  return square;
}

// The largest circle whose middle lies in one of the cells, or the first found of radius `enough`.
Square largest(const Air& air, const Grid& grid, const std::vector<int>& cells, double enough) {
  std::priority_queue<Square> open;
  Square best;
  const auto add = [&](Vec2 middle, double half) {
    const Square square = square_at(air, middle, half);
    if (square.clear > best.clear) best = square;
    if (square.most > best.clear + kGood) open.push(square);
  };
  for (int cell : cells) add(grid.middle(cell), kCell * std::sqrt(0.5));
  while (!open.empty() && best.clear < enough && open.top().most > best.clear + kGood) {
    const Square s = open.top();
    open.pop();
    const double step = s.half * std::sqrt(0.5) / 2;
    for (Vec2 d : {Vec2{-1, -1}, Vec2{1, -1}, Vec2{-1, 1}, Vec2{1, 1}})
      add(s.middle + step * d, s.half / 2);
  }
  return best;
}

struct Pool {
  std::vector<int> cells;
  double clear = 0;  // of its clearest cell
};

Pool pool_of(const Grid& grid, std::vector<int> cells) {
  Pool pool{std::move(cells), 0};
  for (int c : pool.cells) pool.clear = std::max(pool.clear, grid.clear(c));
  return pool;
}

// Cells clear by more than `by`, joined where they touch; and cells that may hold a circle of that
// size between their middles, where they stand by themselves. What reaches the border of the window
// is left out.
std::vector<Pool> pools(const Grid& grid, double by) {
  std::vector<Pool> found;
  std::vector<char> taken(grid.size());
  for (double level : {by, by - kCell}) {
    const std::vector<char> outside = grid.flooded_from_border(level);
    for (int c = 0; c < grid.size(); ++c) taken[c] |= outside[c];
    for (int c = 0; c < grid.size(); ++c) {
      if (taken[c] || grid.clear(c) <= level) continue;
      std::vector<int> cells = grid.flooded(c, level);
      const bool alone =
          std::none_of(cells.begin(), cells.end(), [&](int k) { return taken[k] != 0; });
      for (int k : cells) taken[k] = 1;
      if (alone) found.push_back(pool_of(grid, std::move(cells)));
    }
  }
  return found;
}

// The cells that may hold the middle of the pool's largest circle.
std::vector<int> clearest(const Grid& grid, const Pool& pool) {
  std::vector<int> cells;
  for (int c : pool.cells)
    if (grid.clear(c) >= pool.clear - 2 * kCell) cells.push_back(c);
  return cells;
}

bool stands_on_floor(const Air& air, const Grid& grid, const Pool& pool, double radius) {
  const auto lower = [&](int a, int b) { return grid.middle(a).y < grid.middle(b).y; };
  const int lowest = *std::min_element(pool.cells.begin(), pool.cells.end(), lower);
  const auto rim = air.within(grid.middle(lowest), radius + 2 * kCell);
  return std::any_of(rim.begin(), rim.end(),
                     [](const Touch& t) { return t.owner.kind == Owner::Kind::floor; });
}

// Two that hold the circle between them say all there is; else everything it touches.
std::vector<Touch> holders(const std::vector<Touch>& rim, Vec2 middle) {
  const double opposite = std::cos(kOpposite * std::numbers::pi / 180);
  std::vector<Touch> best = rim;
  double least = opposite;
  for (std::size_t i = 0; i < rim.size(); ++i)
    for (std::size_t k = 0; k < i; ++k) {
      const Vec2 a = rim[i].at - middle, b = rim[k].at - middle;
      const double cosine = dot(a, b) / (norm(a) * norm(b));
      if (cosine < least) least = cosine, best = {rim[k], rim[i]};
    }
  return best;
}

// Between two opposite spots the middle is known exactly, wherever along the slot the search ended.
LeftOpening settled(const Air& air, const Square& best) {
  LeftOpening opening{best.middle, 2 * best.clear,
                      holders(air.within(best.middle, best.clear + kRim), best.middle), false};
  if (opening.rim.size() != 2) return opening;
  const Vec2 a = opening.rim[0].at, b = opening.rim[1].at;
  if (std::abs(norm(b - a) - opening.across) > 10 * kGood) return opening;
  opening.at = 0.5 * (a + b);
  opening.across = norm(b - a);
  return opening;
}

}  // namespace

std::vector<LeftOpening> openings(const Air& air, const Grid& grid, double least, double most) {
  std::vector<LeftOpening> found;
  for (const Pool& pool : pools(grid, least / 2)) {
    if (pool.clear > most / 2 + kCell) continue;
    const auto cells = clearest(grid, pool);
    const Vec2 middle = grid.middle(cells.front());
    const double reach = norm(grid.middle(cells.back()) - middle) + most + 4 * kCell;
    const Square best = largest(air.near(middle, reach), grid, cells, most / 2);
    if (2 * best.clear <= least || 2 * best.clear >= most) continue;
    found.push_back(settled(air, best));
    found.back().ground = stands_on_floor(air, grid, pool, least / 2);
  }
  return found;
}

}  // namespace nook::safe
