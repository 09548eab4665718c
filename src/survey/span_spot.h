// Where a span ends: a free mark, a corner, or a mark on a wall.
#pragma once

#include <tuple>

#include "room/survey.h"

namespace nook {

/// One end of a span; heights count from the floor.
struct SpanSpot {
  int x = -1;                // unknown of a free mark's first coordinate
  int corner = -1;           // the real corner
  int wall = -1, mark = -1;  // a wall, and the unknown of the mark's place on it
  bool from_right = false;
  Height height;
  double board = 0, other_board = 0;  // of the boards it was taken on (left and right of a corner)

  bool free() const { return x >= 0; }
  friend bool operator<(const SpanSpot& a, const SpanSpot& b) {
    return std::tie(a.x, a.corner, a.mark, a.height.value) <
           std::tie(b.x, b.corner, b.mark, b.height.value);
  }
};

/// Two ends and the mean of the tape between them, mm.
struct SpanTie {
  SpanSpot a, b;
  double length = 0;
};

}  // namespace nook
