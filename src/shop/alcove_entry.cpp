// Rows of a piece against the side walls, slid out of the alcove step by step.
#include "shop/alcove_entry.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/invariant.h"
#include "shop/chance.h"

// Seen from above, in the frame of the back wall: `a` to the right along it, `o` out of it.
//
//   ___ back wall, o = 0 ___
//   |                      |
//   left side wall         right side wall
//   |  narrower in front   |
//          o grows

namespace nook {
namespace {

constexpr double kStep = 10;    // mm in depth between rows. Chosen
constexpr double kSpans = 100;  // mm; a piece with more air beside it slides in freely. Chosen
constexpr double kRub = 0.8;    // mm that wood and wallboard give where a piece rubs. Chosen
constexpr double kEase = 6;     // mm kept clear when a piece is brought in askew. Chosen
constexpr double kPlate = 100;  // mm; thicker things are not brought in askew. Chosen
constexpr int kLevels = 5;      // heights at which an upright piece is looked at. Chosen
constexpr int kAngles = 24;     // steps of a piece being lowered. Chosen
constexpr double kNone = std::numeric_limits<double>::infinity();

// Where the surface of side wall `side` stands at depth o and height z, as `a` on the back wall.
double side_at(const RoomShape& room, int back, int side, Vec2 depth_and_height) {
  const WallShape& rear = room.walls[back];
  const WallShape& wall = room.walls[side];
  const Vec2 start = rear.wall_from_room(wall.start);
  const double along_o = dot(wall.along, rear.out), out_o = dot(wall.out, rear.out);
  const double along_a = dot(wall.along, rear.along), out_a = dot(wall.out, rear.along);
  double t = (depth_and_height.x - start.y) / along_o, off = 0;
  for (int round = 0; round < 3; ++round) {
    off = wall.out_at(t, depth_and_height.y);
    t = (depth_and_height.x - start.y - off * out_o) / along_o;
  }
  return start.x + t * along_a + off * out_a;
}

// How deep the alcove is: to the nearer end of its side walls.
double depth_of(const RoomShape& room, int back) {
  double depth = kNone;
  for (const int side : {back - 1, back + 1}) {
    const WallShape& wall = room.walls[side];
    for (const double end : {0.0, wall.length}) {
      const double o = room.walls[back].wall_from_room(wall.room_from_wall(end, 0)).y;
      if (o > 0.5 * wall.length) depth = std::min(depth, o);
    }
  }
  return depth;
}

// The side walls at rows of depth and levels of height.
struct Sides {
  int rows = 0;
  std::vector<double> heights;
  std::vector<double> left, right;  // [level * rows + row]

  size_t index(int level, int row) const {
    return static_cast<size_t>(level) * rows + std::clamp(row, 0, rows - 1);
  }
  double left_at(int level, int row) const { return left[index(level, row)]; }
  double right_at(int level, int row) const { return right[index(level, row)]; }
};

Sides sides_of(const RoomShape& room, int back, const std::vector<double>& heights, int rows) {
  Sides sides{rows, heights, {}, {}};
  for (const double z : heights)
    for (int row = 0; row < rows; ++row) {
      sides.left.push_back(side_at(room, back, back - 1, {row * kStep, z}));
      sides.right.push_back(side_at(room, back, back + 1, {row * kStep, z}));
    }
  return sides;
}

// One row of the piece: its left and right ends at one depth and level.
struct Row {
  int level = 0, row = 0;
  double low = kNone, high = -kNone;
};

// The piece in the back wall's frame.
struct Shape {
  std::vector<double> heights;
  std::vector<Row> rows;
  Vec3 low{kNone, kNone, kNone}, high{-kNone, -kNone, -kNone};  // a, o, z
};

class RowFiller {
 public:
  RowFiller(const WallShape& rear, Shape& shape) : rear_(rear), shape_(shape) {}

  void take(Vec3 p) {
    const Vec2 q = rear_.wall_from_room({p.x, p.y});
    shape_.low = {std::min(shape_.low.x, q.x), std::min(shape_.low.y, q.y),
                  std::min(shape_.low.z, p.z)};
    shape_.high = {std::max(shape_.high.x, q.x), std::max(shape_.high.y, q.y),
                   std::max(shape_.high.z, p.z)};
  }
  void add(Vec3 p) {
    const Vec2 q = rear_.wall_from_room({p.x, p.y});
    Row& row = row_at(level_of(p.z), static_cast<int>(std::lround(q.y / kStep)));
    row.low = std::min(row.low, q.x), row.high = std::max(row.high, q.x);
  }

 private:
  int level_of(double z) const {
    int best = 0;
    for (int k = 1; k < static_cast<int>(shape_.heights.size()); ++k)
      if (std::abs(shape_.heights[k] - z) < std::abs(shape_.heights[best] - z)) best = k;
    return best;
  }
  Row& row_at(int level, int row) {
    for (Row& known : shape_.rows)
      if (known.level == level && known.row == row) return known;
    shape_.rows.push_back({level, row});
    return shape_.rows.back();
  }

  const WallShape& rear_;
  Shape& shape_;
};

// Points along every edge of a prism, no further apart than half a row.
template <typename Take>
void along_edges(const CarriedPiece& piece, const Take& take) {
  const std::vector<Vec3> corners = corners_of(piece);
  const size_t n = piece.outline.size();
  const auto edge = [&](Vec3 from, Vec3 to) {
    const int steps = std::max(1, static_cast<int>(std::ceil(norm(to - from) / (0.5 * kStep))));
    for (int i = 0; i <= steps; ++i) take(from + (static_cast<double>(i) / steps) * (to - from));
  };
  for (size_t i = 0; i < n; ++i) {
    edge(corners[i], corners[(i + 1) % n]);
    edge(corners[n + i], corners[n + (i + 1) % n]);
    edge(corners[i], corners[n + i]);
  }
}

Shape shape_of(const Stance& stance, const WallShape& rear) {
  Shape shape;
  RowFiller filler(rear, shape);
  for (const Vec3 p : stance.corners) filler.take(p);
  const double tall = shape.high.z - shape.low.z;
  const int levels = tall > kPlate ? kLevels : 2;
  for (int k = 0; k < levels; ++k) shape.heights.push_back(shape.low.z + tall * k / (levels - 1));
  for (const CarriedPiece& piece : stance.pieces)
    along_edges(piece, [&](Vec3 p) { filler.add(p); });
  return shape;
}

// As it will be: nothing of it inside a side wall.
Shape cut_to(Shape shape, const Sides& sides) {
  for (Row& row : shape.rows) {
    if (row.row >= sides.rows) continue;
    row.low = std::max(row.low, sides.left_at(row.level, row.row));
    row.high = std::min(row.high, sides.right_at(row.level, row.row));
  }
  return shape;
}

// Air left over, both sides together, when the piece stands `shift` rows in front of its place.
double spare_at(const Shape& shape, const Sides& sides, int shift) {
  double left = kNone, right = kNone;
  for (const Row& row : shape.rows) {
    if (row.row + shift >= sides.rows) continue;
    left = std::min(left, row.low - sides.left_at(row.level, row.row + shift));
    right = std::min(right, sides.right_at(row.level, row.row + shift) - row.high);
  }
  return left + right;
}

double sliding_spare(const Shape& shape, const Sides& sides) {
  double least = kNone;
  for (int shift = 1; shift < sides.rows; ++shift)
    least = std::min(least, spare_at(shape, sides, shift));
  return least;
}

double widest_row(const Shape& shape) {
  double widest = 0;
  for (const Row& row : shape.rows) widest = std::max(widest, row.high - row.low);
  return widest;
}

// A plate `length` across the alcove and `thick` the way it is turned: lowered or swung in.
struct Plate {
  double length = 0, thick = 0;
  bool level = true;

  double across(double angle) const { return length * std::cos(angle) + thick * std::sin(angle); }
  // The turn at which it is only `width` across: from its diagonal on it narrows steadily.
  double angle_for(double width) const {
    double low = std::atan2(thick, length), high = std::numbers::pi / 2;
    for (int i = 0; i < 60; ++i) {
      const double middle = 0.5 * (low + high);
      (across(middle) > width ? low : high) = middle;
    }
    return high;
  }
};

std::optional<Plate> plate_of(const Shape& shape, double length) {
  const double tall = shape.high.z - shape.low.z, deep = shape.high.y - shape.low.y;
  if (std::min(tall, deep) > kPlate) return std::nullopt;
  return Plate{length, std::min(tall, deep), tall <= deep};
}

// Least air between the ends of the plate and the side walls while it turns home, rubbing allowed.
double turning_spare(const RoomShape& room, int back, const Shape& shape, Plate plate,
                     double angle) {
  double least = kNone;
  const double z = 0.5 * (shape.low.z + shape.high.z);
  for (int k = 0; k <= kAngles; ++k) {
    const double turn = angle * k / kAngles, ahead = plate.length * std::sin(turn);
    const Vec2 other = plate.level ? Vec2{0, ahead} : Vec2{ahead, 0};
    for (const double o : {shape.low.y, shape.high.y}) {
      const Vec2 near{std::max(o, 0.0), z};
      const double left_up =
          side_at(room, back, back + 1, near) - side_at(room, back, back - 1, near + other);
      const double right_up =
          side_at(room, back, back + 1, near + other) - side_at(room, back, back - 1, near);
      least = std::min(least, std::min(left_up, right_up) - plate.across(turn) + kRub);
    }
  }
  return least;
}

class Entry {
 public:
  Entry(const Stance& stance, int back, const KnownRoom& known)
      : back_(back),
        known_(known),
        drawn_(shape_of(stance, known.room.walls[back])),
        rows_(static_cast<int>(depth_of(known.room, back) / kStep) + 1) {}

  bool spans() const {
    const double beside = spare_at(drawn_, sides(known_.room), 0);
    return beside < kSpans;  // infinite where the piece stands out in front of the alcove
  }
  Measured slides() const {
    return over_draws(known_, [&](const RoomShape& room) { return sliding(room); });
  }
  double length() const { return widest_row(cut_to(drawn_, sides(known_.room))); }
  std::optional<Plate> plate() const { return plate_of(drawn_, length()); }
  Measured turned(Plate plate, double angle) const {
    return over_draws(known_, [&](const RoomShape& room) {
      const double cut = widest_row(cut_to(drawn_, sides(room)));
      const Plate as_cut{cut, plate.thick, plate.level};
      return std::min(cut + sliding(room) - as_cut.across(angle),
                      turning_spare(room, back_, drawn_, as_cut, angle));
    });
  }

 private:
  Sides sides(const RoomShape& room) const { return sides_of(room, back_, drawn_.heights, rows_); }
  double sliding(const RoomShape& room) const {
    const Sides walls = sides(room);
    return sliding_spare(cut_to(drawn_, walls), walls);
  }

  int back_;
  KnownRoom known_;
  Shape drawn_;
  int rows_;
};

void settle(Pass& pass, Measured spare, double give, double sure) {
  pass.spare = spare;
  pass.chance = chance_above_zero({spare.value + give, spare.sd});
  pass.verdict = verdict_of(pass.chance, sure);
}

}  // namespace

std::optional<Pass> enter_alcove(const Stance& stance, Alcove alcove, const KnownRoom& known,
                                 double sure) {
  require(alcove.back > 0 && alcove.back + 1 < static_cast<int>(known.room.walls.size()),
          "an alcove has a wall on each side");
  const Entry entry(stance, alcove.back, known);
  if (!entry.spans()) return std::nullopt;
  Pass pass;
  pass.kind = Pass::Kind::alcove;
  pass.name = "alcove";
  pass.hold = Hold::slid_in;
  pass.slides = entry.slides();
  pass.widest = Measured{entry.length() + pass.slides->value, pass.slides->sd};
  settle(pass, *pass.slides, kRub, sure);
  const std::optional<Plate> plate = entry.plate();
  if (pass.verdict == Verdict::fits || !plate) return pass;
  const double angle = plate->angle_for(pass.widest->value - kEase);
  Pass askew = pass;
  settle(askew, entry.turned(*plate, angle), 0, sure);
  askew.hold = plate->level ? Hold::lowered_in : Hold::swung_in;
  askew.raised_mm = plate->length * std::sin(angle);
  return askew.chance > pass.chance ? askew : pass;
}

}  // namespace nook
