// The corners of a piece from its readings: Gauss-Newton, with what no cut strays.
#pragma once

#include "shop/tape_reads.h"

namespace nook {

inline constexpr double kOpen =
    100;  // mm, prior sd of a corner: what no reading says is open. Chosen

/// What no reading says is taken to be as needed, within what no cut strays, mm: its left side
/// upright, opposite sizes alike.
struct Kept {
  CornerVector row;
  double sd;
};
std::array<Kept, 3> kept(const Polygon& outline);

/// How far corners stray from what a row keeps, mm.
double strays(const CornerVector& row, const CornerVector& off);
/// How far a shape is from one that saws cut: chi-squared of what it is taken to keep.
double unlikely(const Polygon& outline, const CornerVector& off);

/// How far the corners of an outline are off, mm, and how surely.
struct Solved {
  NormalEquations equations{kOpen};
  CornerVector off{};
};
Solved solved(const std::vector<Taped>& readings, const Polygon& outline);

}  // namespace nook
