// Side walls and edges sampled at the same rows.
#include "shop/alcove_rows.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

constexpr double kTall = 100;  // mm; what is taller is looked at at several heights. Chosen
constexpr int kLevels = 5;     // of those. Chosen
constexpr double kNone = std::numeric_limits<double>::infinity();
// Rows between two that are asked of the wall, 50 mm: a field of sd 2 mm and reach 200 mm bends by
// under 0.02 mm between them. Chosen.
constexpr int kAsked = 5;

int level_of(double z, const std::vector<double>& heights) {
  int best = 0;
  for (int k = 1; k < static_cast<int>(heights.size()); ++k)
    if (std::abs(heights[k] - z) < std::abs(heights[best] - z)) best = k;
  return best;
}

PieceRow& row_at(PieceRows& piece, int level, int row) {
  for (PieceRow& known : piece.rows)
    if (known.level == level && known.row == row) return known;
  piece.rows.push_back({level, row});
  return piece.rows.back();
}

Vec3 wall_from_room(const WallShape& back, Vec3 p) {
  const Vec2 q = back.wall_from_room({p.x, p.y});
  return {q.x, q.y, p.z};
}

void take_bounds(PieceRows& piece, Vec3 p) {
  piece.low = {std::min(piece.low.x, p.x), std::min(piece.low.y, p.y), std::min(piece.low.z, p.z)};
  piece.high = {std::max(piece.high.x, p.x), std::max(piece.high.y, p.y),
                std::max(piece.high.z, p.z)};
}

void take_point(PieceRows& piece, Vec3 p) {
  PieceRow& row =
      row_at(piece, level_of(p.z, piece.heights), static_cast<int>(std::lround(p.y / kRowStep)));
  row.low = std::min(row.low, p.x), row.high = std::max(row.high, p.x);
}

// Points along every edge of a prism, no further apart than half a row.
template <typename Take>
void along_edges(const CarriedPiece& piece, const Take& take) {
  const std::vector<Vec3> corners = corners_of(piece);
  const size_t n = piece.outline.size();
  const auto edge = [&](Vec3 from, Vec3 to) {
    const int steps = std::max(1, static_cast<int>(std::ceil(norm(to - from) / (0.5 * kRowStep))));
    for (int i = 0; i <= steps; ++i) take(from + (static_cast<double>(i) / steps) * (to - from));
  };
  for (size_t i = 0; i < n; ++i) {
    edge(corners[i], corners[(i + 1) % n]);
    edge(corners[n + i], corners[n + (i + 1) % n]);
    edge(corners[i], corners[n + i]);
  }
}

}  // namespace

namespace {

// A side wall against the back wall, seen at one height.
class SideRow {
 public:
  SideRow(const RoomShape& room, int back, int side, double z)
      : wall_(room.walls[side]),
        row_(wall_, z),
        start_(room.walls[back].wall_from_room(wall_.start)),
        along_(in_frame(room.walls[back], wall_.along)),
        out_(in_frame(room.walls[back], wall_.out)) {}

  // Its `a` at depth o.
  double at(double o) const {
    double t = (o - start_.y) / along_.y, off = 0;
    for (int round = 0; round < kRounds; ++round) {  // each leaves some 1 % of the step before it
      const double before = t;
      off = row_.out_at(t);
      t = (o - start_.y - off * out_.y) / along_.y;
      if (std::abs(t - before) < kSettled) break;
    }
    return start_.x + t * along_.x + off * out_.x;
  }

 private:
  static constexpr double kSettled =
      0.001;  // mm along the wall, 1e-5 in what it stands out. Chosen
  static constexpr int kRounds = 3;
  static Vec2 in_frame(const WallShape& back, Vec2 d) {
    return {dot(d, back.along), dot(d, back.out)};
  }

  const WallShape& wall_;
  WallRow row_;
  Vec2 start_, along_, out_;
};

}  // namespace

double side_at(const RoomShape& room, int back, int side, Vec2 at) {
  return SideRow(room, back, side, at.y).at(at.x);
}

double alcove_depth(const RoomShape& room, int back) {
  double depth = kNone;
  for (const int side : {back - 1, back + 1}) {
    const WallShape& wall = room.walls[side];
    const auto out_of_back = [&](double along) {
      return room.walls[back].wall_from_room(wall.room_from_wall(along, 0)).y;
    };
    depth = std::min(depth, std::max(out_of_back(0), out_of_back(wall.length)));
  }
  return depth;
}

namespace {

struct Side {
  int back, wall;
};

// One level of a side wall: asked at every fifth row, straight between.
void add_level(const RoomShape& room, Side side, double z, int rows, std::vector<double>& level) {
  const SideRow wall(room, side.back, side.wall, z);
  const auto asked = [&](int row) { return wall.at(row * kRowStep); };
  double from = asked(0);
  for (int row = 0; row < rows; row += kAsked) {
    const double to = asked(row + kAsked);
    for (int k = 0; k < kAsked && row + k < rows; ++k)
      level.push_back(from + (to - from) * k / kAsked);
    from = to;
  }
}

}  // namespace

SideWalls side_walls(const RoomShape& room, int back, const std::vector<double>& heights) {
  SideWalls walls;
  walls.rows = static_cast<int>(alcove_depth(room, back) / kRowStep) + 1;
  for (const double z : heights) {
    add_level(room, {back, back - 1}, z, walls.rows, walls.left);
    add_level(room, {back, back + 1}, z, walls.rows, walls.right);
  }
  return walls;
}

PieceRows piece_rows(const Stance& stance, const WallShape& back) {
  PieceRows piece{{}, {}, {kNone, kNone, kNone}, {-kNone, -kNone, -kNone}};
  for (const Vec3 p : stance.corners) take_bounds(piece, wall_from_room(back, p));
  const double tall = piece.high.z - piece.low.z;
  const int levels = tall > kTall ? kLevels : 2;
  for (int k = 0; k < levels; ++k) piece.heights.push_back(piece.low.z + tall * k / (levels - 1));
  for (const CarriedPiece& one : stance.pieces)
    along_edges(one, [&](Vec3 p) { take_point(piece, wall_from_room(back, p)); });
  return piece;
}

PieceRows cut_to(PieceRows piece, const SideWalls& walls) {
  for (PieceRow& row : piece.rows) {
    if (row.row >= walls.rows) continue;
    row.low = std::max(row.low, walls.left_at(row.level, row.row));
    row.high = std::min(row.high, walls.right_at(row.level, row.row));
  }
  return piece;
}

double widest_row(const PieceRows& piece) {
  double widest = 0;
  for (const PieceRow& row : piece.rows) widest = std::max(widest, row.high - row.low);
  return widest;
}

double air_beside(const PieceRows& piece, const SideWalls& walls, int shift) {
  double left = kNone, right = kNone;
  for (const PieceRow& row : piece.rows) {
    if (row.row + shift >= walls.rows) continue;
    left = std::min(left, row.low - walls.left_at(row.level, row.row + shift));
    right = std::min(right, walls.right_at(row.level, row.row + shift) - row.high);
  }
  return left + right;
}

double sliding_air(const PieceRows& piece, const SideWalls& walls) {
  double least = kNone;
  for (int shift = 1; shift < walls.rows; ++shift)
    least = std::min(least, air_beside(piece, walls, shift));
  return least;
}

}  // namespace nook
