// Openings measured mid-job: their line, and what they tell, against normal distributions by hand.
#include "shop/as_built.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "sample.h"
#include "shop/opening_line.h"

using namespace nook;
using namespace nook::sample;

namespace {

// Draws in which the right wall leans by N(0, 2) mm per m and stands N(0, 3) mm off.
std::vector<RoomShape> leaning_rooms(int count) {
  std::mt19937_64 random(7);
  std::vector<RoomShape> draws;
  for (int r = 0; r < count; r += 2) {
    const auto normal = [&] {
      double sum = -6;
      for (int k = 0; k < 12; ++k) sum += static_cast<double>(random() >> 11) * 0x1p-53;
      return sum;
    };
    const double lean = normal() * 0.002, off = normal() * 3;
    for (const double side : {1.0, -1.0}) {
      draws.push_back(square_room(3000, 0));
      draws.back().walls[1].lean = side * lean;
      draws.back().walls[1].start.x += side * off;
    }
  }
  return draws;
}

// What a tape at that height reads from the wall to a post that stands still at x = 500.
OpeningRead post_opening(const std::vector<RoomShape>& draws, double height, double read,
                         double sd) {
  OpeningRead opening{"post", read, sd, 500, {}};
  for (const RoomShape& draw : draws)
    opening.drawn.push_back(500 - draw.walls[1].start.x - height * draw.walls[1].lean);
  return opening;
}

double sd_of(const std::vector<double>& values) {
  double sum = 0, squares = 0;
  for (const double v : values) sum += v, squares += v * v;
  const double n = static_cast<double>(values.size());
  return std::sqrt((squares - sum * sum / n) / (n - 1));
}

double gap_at(const RoomShape& room, double height) {
  return 500 - room.walls[1].start.x - height * room.walls[1].lean;
}

std::vector<double> gaps_at(const RoomDrawn& rooms, double height) {
  std::vector<double> gaps;
  for (const RoomShape& draw : rooms.draws) gaps.push_back(gap_at(draw, height));
  return gaps;
}

}  // namespace

TEST_CASE("as built: one opening - mean and sd of a normal prior and a normal reading",
          "[reference]") {
  // Conjugate normal: 1 / s^2 = 1 / prior^2 + 1 / sd^2 (any textbook of statistics).
  const auto draws = leaning_rooms(400);
  const RoomShape room = square_room(3000, 0);
  const OpeningRead opening = post_opening(draws, 0, 504, 1.5);
  const double prior = sd_of(opening.drawn), sd = 1.5;
  const RoomDrawn built = as_built(room, draws, {opening});
  const double weight = prior * prior / (prior * prior + sd * sd);
  CHECK(gap_at(built.room, 0) == Approx(500 + weight * 4).margin(1e-9));
  CHECK(sd_of(gaps_at(built, 0)) ==
        Approx(std::sqrt(1 / (1 / (prior * prior) + 1 / (sd * sd)))).margin(1e-9));
}

TEST_CASE("as built: two openings at two heights tell the lean, in either order", "[reference]") {
  const auto draws = leaning_rooms(400);
  const RoomShape room = square_room(3000, 0);
  const OpeningRead low = post_opening(draws, 0, 502, 0.01),
                    high = post_opening(draws, 2000, 498, 0.01);
  const RoomDrawn one = as_built(room, draws, {low, high}),
                  two = as_built(room, draws, {high, low});
  // From 502 at the floor to 498 at 2 m: 2 mm per m.
  CHECK(one.room.walls[1].lean == Approx(0.002).margin(2e-5));
  CHECK(gap_at(one.room, 1000) == Approx(500).margin(0.02));
  CHECK(one.room.walls[1].lean == Approx(two.room.walls[1].lean).margin(1e-9));
  CHECK(sd_of(gaps_at(one, 1000)) < 0.02);
}

TEST_CASE("as built: what an opening does not hang on stays as it was") {
  const auto draws = leaning_rooms(400);
  RoomShape room = square_room(3000, 0);
  const RoomDrawn built = as_built(room, draws, {post_opening(draws, 0, 504, 1)});
  CHECK(built.room.walls[0].lean == room.walls[0].lean);
  CHECK(built.room.floor.slope.x == room.floor.slope.x);
  CHECK(built.room.walls[1].along.x == room.walls[1].along.x);
  const RoomDrawn none = as_built(room, draws, {});
  CHECK(none.draws[3].walls[1].start.x == draws[3].walls[1].start.x);
}

TEST_CASE("as built: a reading far from what is foretold has its w") {
  OpeningRead opening{"x", 510, 1.5, 500, {}};
  for (int r = 0; r < 400; ++r) opening.drawn.push_back(500 + (r % 2 ? 2 : -2));
  CHECK(opening.foretold_sd() == Approx(2).margin(0.01));
  CHECK(opening.w() == Approx(10 / 2.5).margin(0.01));
}

TEST_CASE("opening: between two upright panels, and between one and a wall", "[reference]") {
  Drawn drawn;
  const double thick = in(0.75);
  drawn.piece("near", rectangle(600, 900), thick).place_in_room = {
      {800, 0, 0}, {0, 1, 0}, {0, 0, 1}, {}, {}};
  drawn.piece("far", rectangle(600, 900), thick).place_in_room = {
      {1500, 0, 0}, {0, 1, 0}, {0, 0, 1}, {}, {}};
  const FitAnswer fit = as_drawn(drawn.design);
  const RoomShape room = square_room(3000, 0);
  const Built built{fit.pieces, fit.frames, room};
  Opening opening;
  opening.between[0] = "far", opening.between[1] = "near";
  opening.out = millimetres(300);
  const auto line = line_of(opening, built);
  REQUIRE(line);
  CHECK(line->axis == 0);
  CHECK(line->height == Approx(450));
  // u = +y and v = +z: the front, w = thickness, looks along +x.
  CHECK(*opening_in(*line, built) == Approx(700 - thick).margin(1e-9));
  opening.between[0] = "right wall";
  const auto to_wall = line_of(opening, built);
  REQUIRE(to_wall);
  CHECK(*opening_in(*to_wall, built) == Approx(800).margin(1e-6));
  opening.between[1] = "nothing of that name";
  CHECK_FALSE(line_of(opening, built));
}

TEST_CASE("opening: a height counts from the floor there, or from a level line that is known") {
  Drawn drawn;
  drawn.piece("post", rectangle(600, 900)).place_in_room = {
      {800, 0, 0}, {0, 1, 0}, {0, 0, 1}, {}, {}};
  const FitAnswer fit = as_drawn(drawn.design);
  RoomShape room = square_room(3000, 0);
  room.floor.slope = {0.02, 0};
  room.line_z.reset();
  const Built built{fit.pieces, fit.frames, room};
  Opening opening;
  opening.between[0] = "right wall", opening.between[1] = "post";
  opening.height = Height{millimetres(500), false, {}};
  const auto line = line_of(opening, built);
  REQUIRE(line);
  // Half way between the wall and the middle of the post: the floor is 0.02 of that higher.
  CHECK(line->height == Approx(500 + 0.02 * (800 + in(23. / 32) / 2) / 2).margin(1e-9));
  opening.height->from_line = true;
  CHECK_FALSE(line_of(opening, built));
}

TEST_CASE("opening: a repeated part means every copy - the one at the tape's height counts") {
  Drawn drawn;
  Part& step = drawn.piece("step", rectangle(600, 100));
  step.place_in_room = {{800, 0, 0}, {0, 1, 0}, {0, 0, 1}, {}, {}};
  step.repeat = Repeat{3, {-100, 0, 300}};
  const FitAnswer fit = as_drawn(drawn.design);
  const RoomShape room = square_room(3000, 0);
  const Built built{fit.pieces, fit.frames, room};
  Opening opening;
  opening.between[0] = "right wall", opening.between[1] = "step";
  opening.height = Height{millimetres(350), false, {}};  // the second of them, at x = 700
  const auto line = line_of(opening, built);
  REQUIRE(line);
  CHECK(*opening_in(*line, built) == Approx(700).margin(1e-6));
}
