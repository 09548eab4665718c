// A piece h high and t thick turns about its foot through sqrt(h^2 + t^2).
#include "shop/tip_up.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "shop/chance.h"
#include "shop/passage.h"

namespace nook {
namespace {

constexpr double kTouching = 1;  // mm of overlap that is still none. Chosen

struct Span {
  double low = std::numeric_limits<double>::infinity();
  double high = -std::numeric_limits<double>::infinity();

  void take(double x) { low = std::min(low, x), high = std::max(high, x); }
  double size() const { return high - low; }
};

// Seen along its broad side in plan: across = along that side, forward = square to it.
struct Upright {
  Vec2 broad;
  Span across, forward, height;
};

Upright upright_of(const std::vector<Vec3>& corners, Vec2 broad) {
  Upright seen{broad, {}, {}, {}};
  for (const Vec3 p : corners) {
    seen.across.take(dot(Vec2{p.x, p.y}, broad));
    seen.forward.take(dot(Vec2{p.x, p.y}, left_of(broad)));
    seen.height.take(p.z);
  }
  return seen;
}

Upright upright_of(const Stance& stance) {
  std::vector<Vec2> plan;
  for (const Vec3 p : stance.corners) plan.push_back({p.x, p.y});
  return upright_of(stance.corners, least_rectangle(plan).direction);
}

double apart(Span a, Span b) {
  return std::max({a.low - b.high, b.low - a.high, 0.0});
}

// Whether `other` reaches into the swing towards `side` (+1 or -1) about the foot there.
bool in_swing(const Upright& piece, const Upright& other, int side) {
  const double shared =
      std::min(piece.across.high, other.across.high) - std::max(piece.across.low, other.across.low);
  if (shared < kTouching) return false;
  const double foot = side > 0 ? piece.forward.high : piece.forward.low;
  const Span reach = side > 0 ? Span{foot + kTouching, 1e9} : Span{-1e9, foot - kTouching};
  if (apart(reach, other.forward) > 0) return false;
  const double away = apart({foot, foot}, other.forward);
  const double above = apart({piece.height.low, piece.height.low}, other.height);
  return std::hypot(away, above) < piece.height.size() - kTouching;
}

Vec2 plan_point(const Upright& piece, double across, double forward) {
  return across * piece.broad + forward * left_of(piece.broad);
}

// The wall that the swing would go through; empty = none.
std::string wall_in_swing(const Upright& piece, const RoomShape& room, int side) {
  const double foot = side > 0 ? piece.forward.high : piece.forward.low;
  for (const double across : {piece.across.low, piece.across.high}) {
    const Vec2 top = plan_point(piece, across, foot + side * piece.height.size());
    for (const WallShape& wall : room.walls)
      if (wall.wall_from_room(top).y < 0) return wall.name + " wall";
  }
  return {};
}

std::string stops_swing(const Upright& piece, const std::vector<Stance>& standing,
                        const RoomShape& room, int side) {
  for (const Stance& other : standing)
    if (in_swing(piece, upright_of(other.corners, piece.broad), side)) return other.name;
  return wall_in_swing(piece, room, side);
}

// The least height from floor to ceiling over its foot.
double head_room(const RoomShape& room, const Upright& piece) {
  double least = std::numeric_limits<double>::infinity();
  for (const double across : {piece.across.low, piece.across.high})
    for (const double forward : {piece.forward.low, piece.forward.high}) {
      const Vec2 p = plan_point(piece, across, forward);
      least = std::min(least, room.ceiling->z(p) - room.floor.z(p));
    }
  return least;
}

}  // namespace

std::optional<Pass> tip_up(const Stance& stance, const std::vector<Stance>& standing,
                           const KnownRoom& known, double sure) {
  const Upright piece = upright_of(stance);
  const double needed = tipping_height(piece.height.size(), piece.forward.size());
  if (needed < kNeverTooTall) return std::nullopt;
  Pass pass;
  pass.kind = Pass::Kind::ceiling;
  pass.name = "ceiling";
  const std::string ahead = stops_swing(piece, standing, known.room, 1);
  const std::string behind = stops_swing(piece, standing, known.room, -1);
  const bool free = ahead.empty() || behind.empty();
  pass.hold = free ? Grip::tipped_up : Grip::stood_up;
  pass.in_the_way = free ? "" : wall_named(ahead).empty() ? ahead : behind;
  if (!known.room.ceiling) return pass;
  const Measured above =
      over_draws(known, [&](const RoomShape& room) { return head_room(room, piece); });
  pass.spare = Measured{above.value - needed, above.sd};
  pass.chance = chance_above_zero(*pass.spare);
  pass.verdict = verdict_of(pass.chance, sure);
  return pass;
}

}  // namespace nook
