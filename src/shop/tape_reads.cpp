// Tapes held level, upright and from corner to corner.
#include "shop/tape_reads.h"

#include <cmath>

#include "shop/level_tape.h"

namespace nook {
namespace {

constexpr double kProbe = 0.01;  // mm, step of a numerical slope. Chosen
constexpr PieceCorner kDiagonals[2][2] = {{lower_left, upper_right}, {lower_right, upper_left}};

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

}  // namespace

Reads width_at(const Polygon& needed, double at) {
  const LevelTape tape(needed, box_of(needed).low.y + at);
  return [tape, at](const Polygon& p) { return tape.read(p, at); };
}

Reads height_at(const Polygon& needed, double at) {
  const Reads width = width_at(on_its_side(needed), at);
  return [width](const Polygon& p) { return width(on_its_side(p)); };
}

Reads diagonal(const Polygon& needed, size_t which) {
  const size_t a = vertex_at(needed, kDiagonals[which][0]);
  const size_t b = vertex_at(needed, kDiagonals[which][1]);
  return [a, b](const Polygon& p) { return norm(p[b] - p[a]); };
}

Reads crossed(const Polygon& needed) {
  return [first = diagonal(needed, 0), second = diagonal(needed, 1)](const Polygon& p) {
    return first(p) - second(p);
  };
}

std::vector<Taped> tape_reads(const PieceAsCut& piece, const Polygon& outline, double sd) {
  std::vector<Taped> all;
  add_chords(all, piece.widths, outline, {0, sd, {}, CutDisagreement::Of::width, 0});
  add_chords(all, piece.heights, outline, {0, sd, {}, CutDisagreement::Of::height, 0});
  for (size_t k = 0; k < piece.diagonals.size() && k < 2; ++k)
    add(all, piece.diagonals[k],
        {0, sd, diagonal(outline, k), CutDisagreement::Of::diagonal, static_cast<int>(k)}, 0);
  return all;
}

CornerVector slope(const Reads& from, const Polygon& outline, const CornerVector& off) {
  CornerVector row;
  for (int i = 0; i < kCorners; ++i) {
    CornerVector more = off, less = off;
    more[i] += kProbe, less[i] -= kProbe;
    row[i] = (from(with_corners(outline, more)) - from(with_corners(outline, less))) / (2 * kProbe);
  }
  return row;
}

}  // namespace nook
