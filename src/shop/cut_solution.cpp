// Linearised on the needed outline, stepped as far as it fits better.
#include "shop/cut_solution.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace nook {
namespace {

constexpr double kShape = 20;    // mm, prior sd of out of square and out of parallel. Chosen
constexpr double kSlant = 0.02;  // of the length it strays over, if that is less. Chosen
constexpr double kLaid = 1e-3;   // mm, how firmly it lies. Chosen
constexpr int kRounds = 20;  // of Gauss-Newton; near the needed outline it settles in three. Chosen
constexpr double kLeastStep = 1e-3;  // of a whole one. Chosen

// Where the piece lies is no question: its lower left corner at its place, its bottom edge level.
void lay_down(NormalEquations& equations) {
  for (const int fixed : {0, 1, 3}) {
    CornerVector row{};
    row[fixed] = 1;
    equations.add(row, 0, kLaid);
  }
}

NormalEquations linear_at(const std::vector<Taped>& readings, const Polygon& outline,
                          const CornerVector& off) {
  NormalEquations equations(kOpen);
  lay_down(equations);
  for (const auto& [row, sd] : kept(outline)) equations.add(row, 0, sd);
  const Polygon now = with_corners(outline, off);
  for (const Taped& reading : readings) {
    const CornerVector row = slope(reading.from, outline, off);
    double value = reading.value - reading.from(now);
    for (int i = 0; i < kCorners; ++i) value += row[i] * off[i];
    equations.add(row, value, reading.sd);
  }
  equations.factor();
  return equations;
}

// Corners no nearer to each other than a tenth of the piece, and none further out than the longest
// board: readings that contradict each other wildly would turn the outline inside out, and no tape
// lies across that.
CornerVector within_reach(CornerVector off, const Polygon& outline) {
  constexpr double kLeast = 0.1;     // of the piece. Chosen
  constexpr double kOutward = 6000;  // mm. Chosen
  const Vec2 size = box_of(outline).high - box_of(outline).low;
  for (double& x : off) x = std::clamp(x, -kOutward, kOutward);
  const auto keep_apart = [&](PieceCorner near, PieceCorner far, int axis) {
    const double most = (axis == 0 ? size.x : size.y) * (1 - kLeast);
    off[2 * far + axis] = std::max(off[2 * far + axis], off[2 * near + axis] - most);
  };
  keep_apart(lower_left, lower_right, 0), keep_apart(upper_left, upper_right, 0);
  keep_apart(lower_left, upper_left, 1), keep_apart(lower_right, upper_right, 1);
  return off;
}

// Chi-squared of the residuals and of what the shape is taken to keep.
double misfit(const std::vector<Taped>& readings, const Polygon& outline, const CornerVector& off) {
  const Polygon cut = with_corners(outline, off);
  double chi = unlikely(outline, off);
  for (const Taped& reading : readings)
    chi += std::pow((reading.from(cut) - reading.value) / reading.sd, 2);
  return chi;
}

// On from `off` towards `to`, so far that it fits better: far from the needed outline a whole step
// may lead away.
CornerVector stepped(const std::vector<Taped>& readings, const Polygon& outline,
                     const CornerVector& off, const CornerVector& to) {
  const double before = misfit(readings, outline, off);
  for (double share = 1; share > kLeastStep; share /= 2) {
    CornerVector next;
    for (int i = 0; i < kCorners; ++i) next[i] = off[i] + share * (to[i] - off[i]);
    if (misfit(readings, outline, next) <= before) return next;
  }
  return off;
}

}  // namespace

std::array<Kept, 3> kept(const Polygon& outline) {
  const Vec2 size = box_of(outline).high - box_of(outline).low;
  const double up = std::min(kShape, kSlant * size.y), across = std::min(kShape, kSlant * size.x);
  return {{{{-1, 0, 0, 0, 0, 0, 1, 0}, up},
           {{1, 0, -1, 0, 1, 0, -1, 0}, up},
           {{0, 1, 0, -1, 0, 1, 0, -1}, across}}};
}

double strays(const CornerVector& row, const CornerVector& off) {
  return std::inner_product(row.begin(), row.end(), off.begin(), 0.0);
}

double unlikely(const Polygon& outline, const CornerVector& off) {
  double chi = 0;
  for (const auto& [row, sd] : kept(outline)) chi += std::pow(strays(row, off) / sd, 2);
  for (const double x : off) chi += x * x / (kOpen * kOpen);
  return chi;
}

Solved solved(const std::vector<Taped>& readings, const Polygon& outline) {
  Solved at;
  for (int round = 0; round < kRounds; ++round) {
    at.equations = linear_at(readings, outline, at.off);
    const CornerVector next =
        stepped(readings, outline, at.off, within_reach(at.equations.solution(), outline));
    if (next == at.off) break;
    at.off = next;
  }
  return at;
}

}  // namespace nook
