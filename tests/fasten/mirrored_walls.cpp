// Over simulated walls: the same wall on the other side of the corner has the mirrored map.
#include <catch2/catch.hpp>
#include <random>

#include "fasten/stud_world.h"

using namespace nook;

namespace {

void swap_walls(RoomShape& room) {
  std::swap(room.walls[0].lean, room.walls[1].lean);
}

// Everything of the left wall put on the right one, and the other way round.
Bench mirrored(const Bench& bench) {
  Bench other = bench;
  std::swap(other.survey.walls[0], other.survey.walls[1]);
  std::swap(other.survey.walls[0].name, other.survey.walls[1].name);
  swap_walls(other.room);
  for (RoomShape& draw : other.draws) swap_walls(draw);
  const Part& ledger = bench.design.parts[0];
  const double length = ledger.outline[1].x, start = ledger.place_in_room.at.x - length;
  other.design.parts.clear();
  other.ledger(1, "ledger", {in_inches(millimetres(start)), in_inches(millimetres(length))},
               in_inches(millimetres(ledger.place_in_room.at.z)));
  other.design.fastenings[0].to = "right wall";
  return other;
}

}  // namespace

TEST_CASE("mirrored walls: a mirrored room has the mirrored map", "[property]") {
  const std::uint64_t seed = 21;
  INFO("seed " << seed);
  std::mt19937_64 random(seed);
  for (int i = 0; i < 20; ++i) {
    const Bench bench = stud_world(random).bench;
    const DrillAnswer here = bench.drilled(), there = mirrored(bench).drilled();
    const auto &a = here.walls[0], &b = there.walls[1];
    REQUIRE(a.studs.size() == b.studs.size());
    for (std::size_t k = 0; k < a.studs.size(); ++k)
      CHECK_THAT(a.studs[k].centre_mm, Catch::WithinAbs(b.studs[k].centre_mm, 1e-9));
    REQUIRE(a.holes.size() == b.holes.size());
    for (std::size_t k = 0; k < a.holes.size(); ++k) {
      CHECK(a.holes[k].stud == b.holes[k].stud);
      CHECK_THAT(a.holes[k].along_mm, Catch::WithinAbs(b.holes[k].along_mm, 1e-9));
      CHECK_THAT(a.holes[k].height_mm, Catch::WithinAbs(b.holes[k].height_mm, 1e-9));
      CHECK_THAT(a.holes[k].hit_chance, Catch::WithinAbs(b.holes[k].hit_chance, 1e-9));
      CHECK(a.holes[k].drive == b.holes[k].drive);
      CHECK(a.holes[k].warnings == b.holes[k].warnings);
    }
  }
}
