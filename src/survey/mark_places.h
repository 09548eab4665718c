// First places of marks in plan, from nothing but the distances between them.
#pragma once

#include <vector>

#include "base/vector.h"

namespace nook {

/// A distance between two marks, by index.
struct Tie {
  int a = 0, b = 0;
  double distance = 0;
};

/// Marks and the distances between them. `fixed[i]` marks stay where `at[i]` says.
struct MarkNet {
  std::vector<Vec2> at;
  std::vector<bool> fixed;
  std::vector<Tie> ties;
};

/// Mirror image of p in the line through a and b. Requires: a and b apart.
Vec2 mirrored(Vec2 p, Vec2 a, Vec2 b);

/// Sum over ties of (distance - tie)^2, mm^2.
double stress(const MarkNet& net);

/// Moves the free marks to where the ties fit well: shortest paths and classical scaling (Torgerson
/// 1952), turned onto the fixed marks, then majorisation (de Leeuw 1977) from there and with marks
/// folded over to their other side while that fits better. Deterministic.
void place_marks(MarkNet& net);

}  // namespace nook
