// Dimensions: one distance with its arrows, and running distances from one start.
#pragma once

#include <string>
#include <vector>

#include "sheet/draft.h"

namespace nook {

/// A dimension line from `from` to `to`, set off to the left of that direction by `off` paper mm
/// (negative: to the right), with its words above the line.
struct Dimension {
  Vec2 from, to;
  double off = 8;
  std::string words;
  std::string name;
};
/// Draws it; words too long for it stand just past its second end.
void draw(Draft& draft, const Dimension& dimension);

/// One mark of a running dimension: this far from its start, real mm, with its words.
struct RunningMark {
  double at = 0;
  std::string words;
  std::string name;
};
/// Distances all counted from one start, never a chain.
struct Running {
  Vec2 start;           // where 0 is
  Vec2 along;           // unit: (1, 0), (-1, 0) or (0, 1), (0, -1)
  Vec2 off;             // unit, square to it: to which side the words stand
  double distance = 4;  // paper mm from the start to the measuring line
  std::string zero;     // what the start is, `0 left edge`; empty: its mark alone
};
/// Draws the measuring line, a tick with words for every mark, words pushed apart so that none
/// overlap. Returns what it covers.
PageBox draw(Draft& draft, const Running& running, std::vector<RunningMark> marks);

}  // namespace nook
