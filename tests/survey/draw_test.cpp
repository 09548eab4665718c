// Rooms drawn: their middle is the room, their spread what the readings leave open.
#include <catch2/catch.hpp>
#include <cmath>

#include "survey/adjustment.h"
#include "true_room.h"

using namespace nook;
using namespace nook::test;
using Catch::WithinAbs;
using Catch::WithinRel;

namespace {

Adjustment adjusted_room(std::uint64_t seed) {
  return adjust(careful_survey(seed, 2, 1));
}

struct Spread {
  double mean = 0, variance = 0;
};
template <class Of>
Spread spread_of(const std::vector<RoomShape>& rooms, Of of) {
  Spread out;
  const double first = of(rooms.front()), count = static_cast<double>(rooms.size());
  for (const RoomShape& room : rooms) out.mean += (of(room) - first) / count;
  out.mean += first;
  for (const RoomShape& room : rooms) out.variance += std::pow(of(room) - out.mean, 2) / count;
  return out;
}

double corner_angle(const RoomShape& room) {
  return std::acos(dot(room.walls[0].along, room.walls[1].along));
}

}  // namespace

TEST_CASE("draws: in fours they lie about the room") {
  const Adjustment adjusted = adjusted_room(21);
  const RoomShape& room = adjusted.room();
  for (const int count : {4, 40}) {
    const std::vector<RoomShape> rooms = adjusted.draws(count);
    REQUIRE(static_cast<int>(rooms.size()) == count);
    for (std::size_t k = 0; k < room.walls.size(); ++k) {
      const auto lean = [k](const RoomShape& r) { return r.walls[k].lean; };
      const auto hump = [k](const RoomShape& r) { return r.walls[k].field.at({700, 900}); };
      CHECK_THAT(spread_of(rooms, lean).mean, WithinAbs(room.walls[k].lean, 1e-15));
      CHECK_THAT(spread_of(rooms, hump).mean, WithinAbs(hump(room), 1e-12));
    }
    CHECK_THAT(spread_of(rooms, corner_angle).mean, WithinAbs(corner_angle(room), 1e-6));
  }
}

TEST_CASE("draws: fewer are the first of more, another seed draws others") {
  const Adjustment adjusted = adjusted_room(22);
  const auto few = adjusted.draws(5), more = adjusted.draws(8), other = adjusted.draws(5, 2);
  REQUIRE(few.size() == 5);
  for (std::size_t i = 0; i < few.size(); ++i)
    CHECK_THAT(few[i].walls[0].lean, WithinAbs(more[i].walls[0].lean, 1e-15));
  CHECK(few[0].walls[0].lean != other[0].walls[0].lean);
}

TEST_CASE("draws: their spread is the certainty that the adjustment states", "[property]") {
  constexpr std::uint64_t kSeed = 23;
  INFO("seed " << kSeed);
  const Adjustment adjusted = adjusted_room(kSeed);
  const auto rooms = adjusted.draws(8000);  // a variance from them is good to about 3 %
  const RoomReport& report = adjusted.report();
  const auto variance = [&](auto of) { return spread_of(rooms, of).variance; };
  for (std::size_t k = 0; k < 2; ++k) {
    const double stated = report.walls[k].lean_mm_per_m.sd / 1000;
    CHECK_THAT(variance([k](const RoomShape& r) { return r.walls[k].lean; }),
               WithinRel(stated * stated, 0.12));
    // A spot of the surface: base line, lean and hump together, in the room frame.
    const Undecided spot{{{{SurfaceSpot::On::wall, static_cast<int>(k), 700, 900, {}}, 1}}, 1};
    const WallShape& wall = adjusted.room().walls[k];
    const auto into_room = [&](const RoomShape& r) {
      const Vec3 p = r.walls[k].point(700, 900);
      return wall.wall_from_room({p.x, p.y}).y;
    };
    CHECK_THAT(variance(into_room), WithinRel(adjusted.variance(spot), 0.12));
  }
  const double angle = report.corners[0].angle_deg.sd * std::acos(-1.0) / 180;
  CHECK_THAT(variance(corner_angle), WithinRel(angle * angle, 0.12));
}
