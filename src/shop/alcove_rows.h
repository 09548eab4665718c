// A piece between the side walls of an alcove, row by row.
#pragma once

#include <limits>
#include <vector>

#include "shop/stance.h"

// Seen from above, in the frame of the back wall: `a` to the right along it, `o` out of it.
//
//   ___ back wall, o = 0 ___
//   |                      |
//   left side wall         right side wall
//   |  narrower in front   |
//          o grows

namespace nook {

/// Where the surface of side wall `side` stands, as `a` on back wall `back`, mm. `at.x` is the
/// depth o, `at.y` the height z.
double side_at(const RoomShape& room, int back, int side, Vec2 at);

/// How deep the alcove is: to the nearer end of its side walls, mm.
double alcove_depth(const RoomShape& room, int back);

/// The distance in depth between two rows, mm. Chosen.
inline constexpr double kRowStep = 10;

/// Both side walls at rows of depth and levels of height.
struct SideWalls {
  int rows = 0;
  std::vector<double> left, right;  // [level * rows + row]

  double left_at(int level, int row) const { return left[index(level, row)]; }
  double right_at(int level, int row) const { return right[index(level, row)]; }

 private:
  size_t index(int level, int row) const {
    const int kept = row < 0 ? 0 : row < rows ? row : rows - 1;
    return static_cast<size_t>(level) * rows + kept;
  }
};
SideWalls side_walls(const RoomShape& room, int back, const std::vector<double>& heights);

/// One row of the piece: its left and right ends at one depth and level.
struct PieceRow {
  int level = 0, row = 0;
  double low = std::numeric_limits<double>::infinity();
  double high = -std::numeric_limits<double>::infinity();
};
/// The piece in the back wall's frame.
struct PieceRows {
  std::vector<double> heights;  // of the levels
  std::vector<PieceRow> rows;
  Vec3 low, high;  // a, o, z
};
PieceRows piece_rows(const Stance& stance, const WallShape& back);

/// The piece as it will be: nothing of it inside a side wall.
PieceRows cut_to(PieceRows piece, const SideWalls& walls);

/// Its widest row, mm.
double widest_row(const PieceRows& piece);

/// Air left over, both sides together, `shift` rows in front of its place; infinite out in front.
double air_beside(const PieceRows& piece, const SideWalls& walls, int shift);

/// The least air on its way out of the alcove, its place itself left out.
double sliding_air(const PieceRows& piece, const SideWalls& walls);

}  // namespace nook
