// A piece as cut once wood is taken off its sides: its figures then, and where the needed piece is
// still in it.
#pragma once

#include <array>
#include <vector>

#include "shop/judged.h"

namespace nook {

inline constexpr double kLeastTrim = 1.5875;  // mm, 1/16 in: less is not trimmed. Chosen

/// A straight trim of one side: how much at its bottom or left end and at its top or right end, mm.
struct Trim {
  EdgeSide side = EdgeSide::left;
  double first = 0, last = 0;
  double most() const { return std::max(first, last); }
};

/// The figures of the piece once the trims are off it, in the order of judged.figures: measured
/// again with the same readings. Empty where its outline has no four corners.
std::vector<CutFigure> figures_after(const Judged& judged, const std::vector<Trim>& trims);

/// The most by which the trimmed side, or the one across from it, is longer or shorter after the
/// trim, from corner to corner, mm: the new edge lies further in, where a slanted piece is not as
/// high.
double changes_ends(const Judged& judged, const Trim& trim);

/// The needed piece laid on the piece as cut, an edge on an edge and a corner on a corner, in each
/// of eight ways: what is then to come off the other sides, 1/16 in at least (chosen), wood left
/// wild apart. Where it sticks out, its edge is taken back, parallel, until it does not.
std::vector<std::vector<Trim>> layings(const Judged& judged);

}  // namespace nook
