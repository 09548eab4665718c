// What ties walls and marks together: diagonals, angles, tapes across, spans between marks.
#pragma once

#include "room/reading.h"

namespace nook {

/// A straight tape between a mark on the corner's first wall and one on its second.
/// Marks that stand at the same spot share one id (that of the first use).
struct Diagonal {
  Reading first, second;
  Readings straight;
  Height height;
  Place place;
};
struct SquareReading {
  Length blade;
  Readings gap;
  bool gap_at_tip = true;  // tip: the corner is open; heel: closed
  Height height;
  Place place;
};
struct AngleReading {
  Angle value;
  std::optional<Angle> sd;
  Length blade;
  Height height;
  bool struck = false;
  std::string given, note, id;
  Place place;
};
/// Mud built up in a corner, fading out over `reach` (linear from `proud` at the corner to 0).
struct Buildup {
  Length proud, reach;
};
struct Corner {
  int walls[2] = {0, 1};            // indices into Survey::walls, left one first
  Height height;                    // of its first entry in the file; left out = 1 m
  std::vector<Diagonal> diagonals;  // several entries, several heights: each carries its own
  std::vector<SquareReading> squares;
  std::vector<AngleReading> angles;
  std::optional<Buildup> buildup;
  Place place;
  int entry = -1;            // its first [[corner]] of the file; -1 where the file has none
  bool right_first = false;  // that entry names the right wall first
};
/// Wall to wall in an alcove, `out` from the wall between the two, at one height.
struct Across {
  int walls[2] = {0, 2};
  Length out;
  Height height;
  Readings is;
  Place place;
};

/// One end of a span: a mark by its name (corners are "left/right"), or a spot on a wall's base.
struct SpanEnd {
  std::string mark;  // empty = a spot on a wall
  int wall = -1;
  Reading along;  // only on a wall
  bool from_right = false;
  std::optional<Height> height;
  Place place;
};
struct Span {
  SpanEnd between[2];
  Readings is;
  Place place;
};

}  // namespace nook
