// Gauss-Newton on what a tape would read from an outline with moved corners.
#include "shop/cut_shape.h"

#include <algorithm>
#include <cmath>
#include <functional>

namespace nook {
namespace {

constexpr double kOpen = 100;    // mm, prior sd of a corner: what no reading says is open. Chosen
constexpr double kAstray = 1;    // mm, sd of where along a piece a reading is taken. Chosen
constexpr double kLaid = 1e-3;   // mm, how firmly it lies. Chosen
constexpr double kProbe = 0.01;  // mm, step of a numerical slope. Chosen
constexpr int kRounds = 8;       // of Gauss-Newton; it settles in three. Chosen

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

std::function<double(const Polygon&)> width_at(double at) {
  return [at](const Polygon& p) { return chord_level(p, bounds_of(p).low.y + at).length(); };
}
std::function<double(const Polygon&)> height_at(double at) {
  return [at](const Polygon& p) { return chord_upright(p, bounds_of(p).low.x + at).length(); };
}

// `astray`: what it reads when it is taken kAstray aside, mm.
void add(std::vector<Taped>& all, const CheckedAt& reading, const Taped& one, double astray) {
  for (const Length value : reading.measured)
    all.push_back({value.mm, std::hypot(reading.sd ? reading.sd->mm : one.sd, astray), one.from});
}

void add_across(std::vector<Taped>& all, const CheckedAt& width, const Polygon& outline,
                double sd) {
  const double at = width.at.mm;
  const double astray = width_at(at + kAstray)(outline) - width_at(at)(outline);
  add(all, width, {0, sd, width_at(at)}, astray);
}
void add_up(std::vector<Taped>& all, const CheckedAt& height, const Polygon& outline, double sd) {
  const double at = height.at.mm;
  const double astray = height_at(at + kAstray)(outline) - height_at(at)(outline);
  add(all, height, {0, sd, height_at(at)}, astray);
}

std::vector<Taped> taped(const PieceAsCut& piece, const Polygon& outline, double sd) {
  std::vector<Taped> all;
  for (const CheckedAt& width : piece.widths) add_across(all, width, outline, sd);
  for (const CheckedAt& height : piece.heights) add_up(all, height, outline, sd);
  const Corner ends[2][2] = {{lower_left, upper_right}, {lower_right, upper_left}};
  for (size_t k = 0; k < piece.diagonals.size() && k < 2; ++k) {
    const size_t a = vertex_at(outline, ends[k][0]), b = vertex_at(outline, ends[k][1]);
    const auto from = [a, b](const Polygon& p) { return norm(p[b] - p[a]); };
    add(all, piece.diagonals[k], {0, sd, from}, 0);
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

NormalEquations linear_at(const std::vector<Taped>& readings, const Polygon& outline,
                          const CornerVector& off) {
  NormalEquations equations(kOpen);
  lay_down(equations);
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

std::vector<CutStation> stations(const std::vector<CheckedAt>& readings, const Polygon& outline,
                                 const CornerVector& off,
                                 std::function<double(const Polygon&)> (*at)(double)) {
  std::vector<CutStation> all;
  for (const CheckedAt& reading : readings) {
    const auto from = at(reading.at.mm);
    const double wanted = from(outline);
    all.push_back({reading.at.mm, wanted, slope({0, 0, from}, outline, off),
                   from(with_corners(outline, off)) - wanted});
  }
  std::sort(all.begin(), all.end(),
            [](const CutStation& a, const CutStation& b) { return a.at < b.at; });
  return all;
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
  CutShape shape{NormalEquations(kOpen), {}, b.high.x - b.low.x, b.high.y - b.low.y, {}, {}};
  for (int round = 0; round < kRounds; ++round) {
    shape.equations = linear_at(readings, needed.outline, shape.off);
    shape.off = shape.equations.solution();
  }
  shape.widths = stations(piece.widths, needed.outline, shape.off, width_at);
  shape.heights = stations(piece.heights, needed.outline, shape.off, height_at);
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
