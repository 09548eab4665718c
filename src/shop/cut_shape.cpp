// Gauss-Newton on what a tape would read from an outline with moved corners.
#include "shop/cut_shape.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <numeric>

#include "shop/level_tape.h"
#include "shop/measured_on.h"

namespace nook {
namespace {

constexpr double kOpen = 100;    // mm, prior sd of a corner: what no reading says is open. Chosen
constexpr double kAstray = 1;    // mm, sd of where along a piece a reading is taken. Chosen
constexpr double kShape = 20;    // mm, prior sd of out of square and out of parallel. Chosen
constexpr double kSlant = 0.02;  // of the length it strays over, if that is less. Chosen
constexpr double kLaid = 1e-3;   // mm, how firmly it lies. Chosen
constexpr double kProbe = 0.01;  // mm, step of a numerical slope. Chosen
constexpr int kRounds = 20;  // of Gauss-Newton; near the needed outline it settles in three. Chosen
constexpr double kLeastStep = 1e-3;  // of a whole one. Chosen

enum Corner { lower_left, lower_right, upper_right, upper_left };
constexpr Corner kAround[] = {lower_left, lower_right, upper_right, upper_left};
constexpr Corner kDiagonals[2][2] = {{lower_left, upper_right}, {lower_right, upper_left}};

// The vertex nearest to a corner of the outline's bounds.
size_t vertex_at(const Polygon& outline, Corner corner) {
  const Box2 b = box_of(outline);
  const Vec2 ends[] = {b.low, {b.high.x, b.low.y}, b.high, {b.low.x, b.high.y}};
  size_t best = 0;
  for (size_t i = 1; i < outline.size(); ++i)
    if (norm(outline[i] - ends[corner]) < norm(outline[best] - ends[corner])) best = i;
  return best;
}

using Reads = std::function<double(const Polygon&)>;

// One thing a tape read, and what it would read from an outline.
struct Taped {
  double value, sd;
  Reads from;
  CutDisagreement::Of of = CutDisagreement::Of::width;
  int index = 0;
};

// What a tape reads at a height, or at a distance from the left, held where it is on the needed
// outline.
Reads width_at(const Polygon& needed, double at) {
  const LevelTape tape(needed, box_of(needed).low.y + at);
  return [tape, at](const Polygon& p) { return tape.read(p, at); };
}
Reads height_at(const Polygon& needed, double at) {
  const Reads width = width_at(on_its_side(needed), at);
  return [width](const Polygon& p) { return width(on_its_side(p)); };
}

// What a tape reads from corner to corner, the first diagonal or the second.
Reads diagonal(const Polygon& needed, size_t which) {
  const size_t a = vertex_at(needed, kDiagonals[which][0]);
  const size_t b = vertex_at(needed, kDiagonals[which][1]);
  return [a, b](const Polygon& p) { return norm(p[b] - p[a]); };
}

// The first diagonal less the second.
Reads crossed(const Polygon& needed) {
  return [first = diagonal(needed, 0), second = diagonal(needed, 1)](const Polygon& p) {
    return first(p) - second(p);
  };
}

// `astray`: what it reads when it is taken kAstray aside, mm.
void add(std::vector<Taped>& all, const CheckedAt& reading, const Taped& one, double astray) {
  for (size_t i = 0; i < reading.measured.size(); ++i) {
    const auto stated = i < reading.sd.size() ? reading.sd[i] : std::nullopt;
    all.push_back({reading.measured[i].mm, std::hypot(stated ? stated->mm : one.sd, astray),
                   one.from, one.of, one.index});
  }
}

// Readings of one kind, each as uncertain as the outline is slanted where it was taken.
void add_chords(std::vector<Taped>& all, const std::vector<CheckedAt>& readings,
                const Polygon& outline, Taped one) {
  const auto at = one.of == CutDisagreement::Of::width ? width_at : height_at;
  for (const CheckedAt& reading : readings) {
    one.from = at(outline, reading.at.mm);
    add(all, reading, one, at(outline, reading.at.mm + kAstray)(outline) - one.from(outline));
    ++one.index;
  }
}

std::vector<Taped> taped(const PieceAsCut& piece, const Polygon& outline, double sd) {
  std::vector<Taped> all;
  add_chords(all, piece.widths, outline, {0, sd, {}, CutDisagreement::Of::width, 0});
  add_chords(all, piece.heights, outline, {0, sd, {}, CutDisagreement::Of::height, 0});
  for (size_t k = 0; k < piece.diagonals.size() && k < 2; ++k)
    add(all, piece.diagonals[k],
        {0, sd, diagonal(outline, k), CutDisagreement::Of::diagonal, static_cast<int>(k)}, 0);
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

// What no reading says is taken to be as needed, within what no cut strays: its left side upright,
// opposite sizes alike.
struct Kept {
  CornerVector row;
  double sd;  // mm
};
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

// How far a shape is from one that saws cut: chi-squared of what it is taken to keep.
double unlikely(const Polygon& outline, const CornerVector& off) {
  double chi = 0;
  for (const auto& [row, sd] : kept(outline)) chi += std::pow(strays(row, off) / sd, 2);
  for (const double x : off) chi += x * x / (kOpen * kOpen);
  return chi;
}

// A shape that nobody cuts, whatever agrees with it.
bool misshapen(const Polygon& outline, const CornerVector& off) {
  constexpr double kNever = 152.4;  // mm, 6 in. Chosen
  const auto all = kept(outline);
  return std::any_of(all.begin(), all.end(),
                     [&](const Kept& one) { return std::abs(strays(one.row, off)) > kNever; });
}

NormalEquations linear_at(const std::vector<Taped>& readings, const Polygon& outline,
                          const CornerVector& off) {
  NormalEquations equations(kOpen);
  lay_down(equations);
  for (const auto& [row, sd] : kept(outline)) equations.add(row, 0, sd);
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

// Of the sizes, `wild` is wood that is still on besides what is wanted.
struct Sizes {
  const std::vector<CheckedAt>& readings;
  Reads (*at)(const Polygon&, double);
  double wild;
};
std::vector<CutStation> stations(const Sizes& sizes, const Polygon& outline,
                                 const CornerVector& off) {
  const auto& [readings, at, wild] = sizes;
  std::vector<CutStation> all;
  for (const CheckedAt& reading : readings) {
    const auto from = at(outline, reading.at.mm);
    const double wanted = from(outline) - wild;
    const double aside = at(outline, reading.at.mm + kAstray)(outline) - from(outline);
    all.push_back({reading.at.mm, wanted, slope({0, 0, from, {}, 0}, outline, off),
                   from(with_corners(outline, off)) - wanted, std::hypot(1, aside / kAstray)});
  }
  std::sort(all.begin(), all.end(),
            [](const CutStation& a, const CutStation& b) { return a.at < b.at; });
  return all;
}

CutStation crossing(const Polygon& outline, const CornerVector& off) {
  const Reads from = crossed(outline);
  const double wanted = from(outline);
  return {0, wanted, slope({0, 0, from, {}, 0}, outline, off),
          from(with_corners(outline, off)) - wanted, 1};
}

// From the corners of an outline's bounds to those of another.
CornerVector corners_between(const Polygon& from, const Polygon& to) {
  const Box2 a = box_of(from), b = box_of(to);
  const Vec2 low = b.low - a.low, high = b.high - a.high;
  return {low.x, low.y, high.x, low.y, high.x, high.y, low.x, high.y};
}

CornerVector plus(CornerVector a, const CornerVector& b) {
  for (int i = 0; i < kCorners; ++i) a[i] += b[i];
  return a;
}

// The value that chi-squared of `dof` passes once in 1000 (Wilson and Hilferty 1931).
double chi_limit(double dof) {
  constexpr double kNormal = 3.0902;  // the normal quantile of .999
  const double share = 2 / (9 * dof);
  return dof * std::pow(1 - share + kNormal * std::sqrt(share), 3);
}

// Corners no nearer to each other than a tenth of the piece, and none further out than the longest
// board: readings that contradict each other wildly would turn the outline inside out, and no tape
// lies across that.
CornerVector within_reach(CornerVector off, const Polygon& outline) {
  constexpr double kLeast = 0.1;     // of the piece. Chosen
  constexpr double kOutward = 6000;  // mm. Chosen
  const Vec2 size = box_of(outline).high - box_of(outline).low;
  for (double& x : off) x = std::clamp(x, -kOutward, kOutward);
  const auto keep_apart = [&](Corner near, Corner far, int axis) {
    const double most = (axis == 0 ? size.x : size.y) * (1 - kLeast);
    off[2 * far + axis] = std::max(off[2 * far + axis], off[2 * near + axis] - most);
  };
  keep_apart(lower_left, lower_right, 0), keep_apart(upper_left, upper_right, 0);
  keep_apart(lower_left, upper_left, 1), keep_apart(lower_right, upper_right, 1);
  return off;
}

struct Solved {
  NormalEquations equations{kOpen};
  CornerVector off{};
};
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

Solved solved(const std::vector<Taped>& readings, const Polygon& outline) {
  Solved at;
  for (int round = 0; round < kRounds; ++round) {
    at.equations = linear_at(readings, outline, at.off);
    at.off = stepped(readings, outline, at.off, within_reach(at.equations.solution(), outline));
  }
  return at;
}

struct Chi {
  double value = 0, dof = 0;
  // The global test.
  bool agrees() const { return dof < 0.5 || value <= chi_limit(dof); }
};
Chi chi_of(const std::vector<Taped>& readings, const Polygon& outline, const Solved& at) {
  const Polygon cut = with_corners(outline, at.off);
  Chi chi;
  for (const Taped& reading : readings) {
    const double v = (reading.from(cut) - reading.value) / reading.sd;
    chi.value += v * v;
    chi.dof +=
        1 - at.equations.variance(slope(reading, outline, at.off)) / (reading.sd * reading.sd);
  }
  return chi;
}

// Readings set against the others: how ill those agree among themselves and with a shape that saws
// cut, and what they say.
struct Apart {
  double ill = 1e300;
  std::optional<CutDisagreement> first;
};
template <class Others>
Apart set_apart(const std::vector<Taped>& readings, const Polygon& outline, Others other) {
  std::vector<Taped> others;
  const Taped* first = nullptr;
  for (const Taped& reading : readings)
    if (other(reading))
      others.push_back(reading);
    else if (!first)
      first = &reading;
  if (!first || others.empty()) return {};
  const Solved at = solved(others, outline);
  const double says = first->from(with_corners(outline, at.off));
  return {chi_of(others, outline, at).value + unlikely(outline, at.off),
          CutDisagreement{first->of, first->index, first->value, says}};
}

// The reading without which the others agree best, each left out in its turn. Where they do not
// even then, those that no saw strays to are left out together.
std::optional<CutDisagreement> disagreement(const std::vector<Taped>& readings,
                                            const Polygon& outline, const Solved& all) {
  if (chi_of(readings, outline, all).agrees() && !misshapen(outline, all.off)) return std::nullopt;
  Apart best;
  for (const Taped& one : readings) {
    Apart next = set_apart(readings, outline, [&](const Taped& r) { return &r != &one; });
    if (next.ill < best.ill) best = std::move(next);
  }
  Apart near = set_apart(readings, outline, [&](const Taped& reading) {
    return std::abs(reading.value - reading.from(outline)) < kFarOff;
  });
  const bool alone = best.ill <= chi_limit(1) || near.ill > best.ill;
  return alone ? best.first : near.first;
}

}  // namespace

bool is_shaped(const Polygon& outline) {
  constexpr double kFar = 0.1;  // of the piece's lesser size. Chosen
  const Box2 b = box_of(outline);
  const Vec2 size = b.high - b.low;
  const Vec2 ends[] = {b.low, {b.high.x, b.low.y}, b.high, {b.low.x, b.high.y}};
  return std::any_of(std::begin(kAround), std::end(kAround), [&](Corner corner) {
    return norm(outline[vertex_at(outline, corner)] - ends[corner]) >
           kFar * std::min(size.x, size.y);
  });
}

Polygon with_corners(const Polygon& outline, const CornerVector& off) {
  const Box2 b = box_of(outline);
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
  const MeasuredOn on = measured_on(piece, needed);
  const std::vector<Taped> readings = taped(piece, on.outline, sd);
  const Box2 b = box_of(needed.outline);
  CutShape shape{
      NormalEquations(kOpen), {}, b.high.x - b.low.x, b.high.y - b.low.y, {}, {}, {}, {}};
  const Solved all = solved(readings, on.outline);
  shape.equations = all.equations;
  shape.off = plus(all.off, corners_between(needed.outline, on.outline));
  shape.widths = stations({piece.widths, width_at, on.across}, on.outline, all.off);
  shape.heights = stations({piece.heights, height_at, on.up}, on.outline, all.off);
  shape.crossed = crossing(on.outline, all.off);
  shape.disagreement = disagreement(readings, on.outline, all);
  return shape;
}

std::array<Vec2, 4> corners_of(const Polygon& outline, const Polygon& needed) {
  std::array<Vec2, 4> corners;
  for (const Corner corner : kAround) corners[corner] = outline[vertex_at(needed, corner)];
  return corners;
}

PieceAsCut read_from(const Polygon& outline, PieceAsCut piece, const Polygon& needed) {
  const auto take = [&](CheckedAt& reading, const Reads& from) {
    for (Length& value : reading.measured) value = millimetres(from(outline));
  };
  for (CheckedAt& width : piece.widths) take(width, width_at(needed, width.at.mm));
  for (CheckedAt& height : piece.heights) take(height, height_at(needed, height.at.mm));
  for (size_t k = 0; k < piece.diagonals.size() && k < 2; ++k)
    take(piece.diagonals[k], diagonal(needed, k));
  return piece;
}

}  // namespace nook
