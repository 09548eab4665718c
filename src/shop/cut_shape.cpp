// Gauss-Newton on what a tape would read from an outline with moved corners.
#include "shop/cut_shape.h"

#include <algorithm>
#include <cmath>
#include <functional>

namespace nook {
namespace {

constexpr double kOpen = 100;     // mm, prior sd of a corner: what no reading says is open. Chosen
constexpr double kParallel = 20;  // mm, prior sd of how unlike two opposite sizes are. Chosen
constexpr double kLaid = 1e-3;    // mm, how firmly it lies. Chosen
constexpr double kProbe = 0.01;   // mm, step of a numerical slope. Chosen
constexpr int kRounds = 8;        // of Gauss-Newton; it settles in three. Chosen

enum Corner { lower_left, lower_right, upper_right, upper_left };

// The vertex nearest to a corner of the outline's bounds.
size_t vertex_at(const Polygon& outline, Corner corner) {
  const Bounds b = bounds_of(outline);
  const Vec2 ends[] = {b.low, {b.high.x, b.low.y}, b.high, {b.low.x, b.high.y}};
  size_t best = 0;
  for (size_t i = 1; i < outline.size(); ++i)
    if (norm(outline[i] - ends[corner]) < norm(outline[best] - ends[corner])) best = i;
  return best;
}

// One thing a tape read, and what it would read from an outline.
struct Taped {
  double value, sd;
  std::function<double(const Polygon&)> from;
};

void add(std::vector<Taped>& all, const CheckedAt& reading, double sd,
         const std::function<double(const Polygon&)>& from) {
  for (const Length value : reading.measured)
    all.push_back({value.mm, reading.sd ? reading.sd->mm : sd, from});
}

std::vector<Taped> taped(const PieceAsCut& piece, const Polygon& outline, double sd) {
  std::vector<Taped> all;
  for (const CheckedAt& width : piece.widths)
    add(all, width, sd, [at = width.at.mm](const Polygon& p) {
      return chord_level(p, bounds_of(p).low.y + at).length();
    });
  for (const CheckedAt& height : piece.heights)
    add(all, height, sd, [at = height.at.mm](const Polygon& p) {
      return chord_upright(p, bounds_of(p).low.x + at).length();
    });
  const Corner ends[2][2] = {{lower_left, upper_right}, {lower_right, upper_left}};
  for (size_t k = 0; k < piece.diagonals.size() && k < 2; ++k) {
    const size_t a = vertex_at(outline, ends[k][0]), b = vertex_at(outline, ends[k][1]);
    add(all, piece.diagonals[k], sd, [a, b](const Polygon& p) { return norm(p[b] - p[a]); });
  }
  return all;
}

CornerVector slope(const Taped& reading, const Polygon& outline, const CornerVector& off) {
  CornerVector row;
  for (int i = 0; i < kCorners; ++i) {
    CornerVector more = off, less = off;
    more[i] += kProbe, less[i] -= kProbe;
    row[i] =
        (reading.from(with_corners(outline, more)) - reading.from(with_corners(outline, less))) /
        (2 * kProbe);
  }
  return row;
}

// Where the piece lies is no question: its lower left corner at its place, its bottom edge level.
void lay_down(NormalEquations& equations) {
  for (const int fixed : {0, 1, 3}) {
    CornerVector row{};
    row[fixed] = 1;
    equations.add(row, 0, kLaid);
  }
}

// Opposite sizes stray alike: one width says something about the other, not much.
void keep_parallel(NormalEquations& equations) {
  equations.add({1, 0, -1, 0, 1, 0, -1, 0}, 0, kParallel);
  equations.add({0, 1, 0, -1, 0, 1, 0, -1}, 0, kParallel);
}

NormalEquations linear_at(const std::vector<Taped>& readings, const Polygon& outline,
                          const CornerVector& off) {
  NormalEquations equations(kOpen);
  lay_down(equations);
  keep_parallel(equations);
  const Polygon now = with_corners(outline, off);
  for (const Taped& reading : readings) {
    const CornerVector row = slope(reading, outline, off);
    double value = reading.value - reading.from(now);
    for (int i = 0; i < kCorners; ++i) value += row[i] * off[i];
    equations.add(row, value, reading.sd);
  }
  equations.factor();
  return equations;
}

}  // namespace

Polygon with_corners(const Polygon& outline, const CornerVector& off) {
  const Bounds b = bounds_of(outline);
  Polygon moved = outline;
  for (Vec2& p : moved) {
    const double s = (p.x - b.low.x) / (b.high.x - b.low.x);
    const double t = (p.y - b.low.y) / (b.high.y - b.low.y);
    const double share[] = {(1 - s) * (1 - t), s * (1 - t), s * t, (1 - s) * t};
    for (int c = 0; c < 4; ++c) p = p + share[c] * Vec2{off[2 * c], off[2 * c + 1]};
  }
  return moved;
}

CutShape cut_shape(const PieceAsCut& piece, const NeededPiece& needed, double sd) {
  const std::vector<Taped> readings = taped(piece, needed.outline, sd);
  const Bounds b = bounds_of(needed.outline);
  CutShape shape{NormalEquations(kOpen), {}, b.high.x - b.low.x, b.high.y - b.low.y};
  for (int round = 0; round < kRounds; ++round) {
    shape.equations = linear_at(readings, needed.outline, shape.off);
    shape.off = shape.equations.solution();
  }
  return shape;
}

std::string mirrored_corner(std::string corner) {
  const auto swap_word = [&](const std::string& from, const std::string& to) {
    const size_t at = corner.find(from);
    if (at == std::string::npos) return false;
    corner.replace(at, from.size(), to);
    return true;
  };
  if (!swap_word("left", "right")) swap_word("right", "left");
  return corner;
}

PieceAsCut seen_from_front(PieceAsCut piece, double width) {
  for (CheckedAt& height : piece.heights) height.at = millimetres(width) - height.at;
  if (piece.diagonals.size() == 2) std::swap(piece.diagonals[0], piece.diagonals[1]);
  for (NotchAsCut& notch : piece.notches) notch.corner = mirrored_corner(notch.corner);
  return piece;
}

}  // namespace nook
