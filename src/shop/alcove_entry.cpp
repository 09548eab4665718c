// Slid straight in, or brought in askew and turned home behind the narrow place.
#include "shop/alcove_entry.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "base/invariant.h"
#include "shop/alcove_rows.h"
#include "shop/chance.h"

namespace nook {
namespace {

constexpr double kSpans = 100;  // mm; a piece with more air beside it slides in freely. Chosen
constexpr double kRub = 0.8;    // mm that wood and wallboard give where a piece rubs. Chosen
constexpr double kEase = 6;     // mm kept clear when a piece is brought in askew. Chosen
constexpr double kPlate = 100;  // mm; thicker things are not brought in askew. Chosen
constexpr int kAngles = 8;      // steps of a piece turned home. Chosen
constexpr int kEachRow = 5;     // of the rows looked at then. Chosen

// A plate `length` across the alcove, `thick` in the plane it is turned in: lowered in where it is
// level, swung in where it stands.
struct Plate {
  double length = 0, thick = 0;
  bool level = true;

  double across(double angle) const { return length * std::cos(angle) + thick * std::sin(angle); }
  // The turn at which it is only `width` across; from its diagonal on it narrows steadily.
  double angle_for(double width) const {
    double low = std::atan2(thick, length), high = std::numbers::pi / 2;
    for (int i = 0; i < 60; ++i) {
      const double middle = 0.5 * (low + high);
      (across(middle) > width ? low : high) = middle;
    }
    return high;
  }
};

struct Turned {
  Plate plate;
  double angle = 0;
};

std::optional<Plate> plate_of(const PieceRows& piece, double length) {
  const double tall = piece.high.z - piece.low.z, deep = piece.high.y - piece.low.y;
  if (std::min(tall, deep) > kPlate) return std::nullopt;
  return Plate{length, std::min(tall, deep), tall <= deep};
}

// The stance, its alcove and the room it is judged in.
class Entry {
 public:
  Entry(const Stance& stance, int back, const KnownRoom& known)
      : back_(back), known_(known), drawn_(piece_rows(stance, known.room.walls[back])) {}

  bool spans() const { return air_beside(drawn_, walls(known_.room), 0) < kSpans; }
  double length() const { return widest_row(cut_to(drawn_, walls(known_.room))); }
  std::optional<Plate> plate() const { return plate_of(drawn_, length()); }

  Measured slides() const {
    return over_draws(known_, [&](const RoomShape& room) {
      const SideWalls& sides = walls(room);
      return sliding_air(cut_to(drawn_, sides), sides);
    });
  }
  // The least air on the way when it passes the front turned so.
  Measured turned(const Turned& by) const {
    return over_draws(known_, [&](const RoomShape& room) {
      const SideWalls& sides = walls(room);
      const PieceRows cut = cut_to(drawn_, sides);
      const Plate whole{widest_row(cut), by.plate.thick, by.plate.level};
      const double front = whole.length + sliding_air(cut, sides);
      return std::min(front - whole.across(by.angle), turning_home(room, cut, by));
    });
  }

 private:
  // Kept for each room: sliding and turning both ask for them.
  const SideWalls& walls(const RoomShape& room) const {
    const auto [it, fresh] = walls_.try_emplace(&room);
    if (fresh) it->second = side_walls(room, back_, drawn_.heights);
    return it->second;
  }

  // Least air between its ends and the side walls while it turns home, rubbing allowed.
  double turning_home(const RoomShape& room, const PieceRows& cut, const Turned& by) const {
    double least = std::numeric_limits<double>::infinity();
    for (const PieceRow& row : cut.rows) {
      if (row.row % kEachRow != 0) continue;
      const Plate plate{row.high - row.low, by.plate.thick, by.plate.level};
      const Vec2 near{std::max(row.row, 0) * kRowStep, cut.heights[row.level]};
      const Sides here = sides_at(room, near);
      for (int k = 0; k <= kAngles; ++k) {
        const Turned turn{plate, by.angle * k / kAngles};
        const double ahead = plate.length * std::sin(turn.angle);
        const Sides other = sides_at(room, near + (plate.level ? Vec2{0, ahead} : Vec2{ahead, 0}));
        least = std::min(least, between(here, other) - plate.across(turn.angle));
      }
    }
    return least + kRub;
  }
  // Where the side walls stand at one spot of the way.
  struct Sides {
    double left, right;
  };
  Sides sides_at(const RoomShape& room, Vec2 at) const {
    return {side_at(room, back_, back_ - 1, at), side_at(room, back_, back_ + 1, at)};
  }
  // With the better end ahead (or up).
  static double between(const Sides& near, const Sides& other) {
    return std::max(near.right - other.left, other.right - near.left);
  }

  int back_;
  KnownRoom known_;
  PieceRows drawn_;
  mutable std::map<const RoomShape*, SideWalls> walls_;
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
  pass.hold = Grip::slid_in;
  pass.slides = entry.slides();
  pass.widest = Measured{entry.length() + pass.slides->value, pass.slides->sd};
  settle(pass, *pass.slides, kRub, sure);
  const std::optional<Plate> plate = entry.plate();
  if (pass.verdict == Verdict::fits || !plate) return pass;
  const double angle = plate->angle_for(pass.widest->value - kEase);
  Pass askew = pass;
  settle(askew, entry.turned({*plate, angle}), 0, sure);
  askew.hold = plate->level ? Grip::lowered_in : Grip::swung_in;
  askew.raised_mm = plate->length * std::sin(angle);
  return askew.chance > pass.chance ? askew : pass;
}

}  // namespace nook
