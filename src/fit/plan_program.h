// The wishes of a group that is pushed home, in their order, as small programs in plan.
#pragma once

#include <array>
#include <vector>

#include "fit/least_move.h"

namespace nook {

/// Two ways in plan and a turn, all in mm (the turn: at the rim of the group).
using Moves = std::array<double, 3>;

/// One gap in plan as it depends on the moves, near where it was looked at: gap(x) = at + slope .
/// x.
struct PlanGap {
  double at = 0;
  Moves slope{};
  double wanted = 0;
  bool cut = false;  // overlap here is wood that a scribe or taper takes off
  int target = -1;   // which of the targets it belongs to; -1 = only to be kept clear
  int body = 0;      // gaps to one and the same thing: their overlap is one
  int spot = 0;      // which of them: the same in every room
};

/// What stopped a group at each step of its way home.
using StopsOnTheWay = std::vector<Stops>;

/// What to make small, one after the other.
struct Wishes {
  std::vector<int> tight;  // targets, first the most wanted
  bool parallel = false;   // then: the third move (the turn) as near as may be to parallel_at
  double parallel_at = 0;
};

/// The moves: first the least overlap of what may not be cut, then of what may (a piece that jams
/// is not slid out along a wedge: its overlap stays and is told); each tight target's greatest gap;
/// parallel; the greatest gap of all targets; at last the least move. Moves that are not free have
/// slope 0 everywhere and stay 0. `stops` are those of a room much like this one, or none, and
/// become this one's.
Moves pushed_home(const std::vector<PlanGap>& gaps, const Wishes& wishes, StopsOnTheWay& stops);

}  // namespace nook
