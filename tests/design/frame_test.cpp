// Turn and lean of a placement, and where repeated parts stand.
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "design/piece.h"

using namespace nook;

namespace {

constexpr double kNear = 1e-9;

double apart(Vec3 a, Vec3 b) {
  return norm(a - b);
}

// Rodrigues' rotation formula (1840): another way than adding two directions.
Vec3 rotated(Vec3 p, Vec3 axis, double angle) {
  return std::cos(angle) * p + std::sin(angle) * cross(axis, p) +
         (1 - std::cos(angle)) * dot(axis, p) * axis;
}

// A part by name, a rectangle of that size.
Part part_named(const std::string& name, double width, double height) {
  Part part;
  part.name = part.group = name;
  part.outline = {{0, 0}, {width, 0}, {width, height}, {0, height}};
  part.place_in_room = {{100, 200, 300}, {1, 0, 0}, {0, 0, 1}, {}, {}};
  return part;
}

Design design_of(std::vector<Part> parts) {
  Design design;
  design.stock.push_back({});
  design.stock[0].thickness = millimetres(18);
  design.parts = std::move(parts);
  return design;
}

}  // namespace

TEST_CASE("frame: a piece as drawn has u, v and w = u x v") {
  const Frame frame = frame_of({{1, 2, 3}, {1, 0, 0}, {0, 0, 1}, {}, {}});
  CHECK(apart(frame.w, {0, -1, 0}) < kNear);
  CHECK(apart(frame.room_from_piece({10, 20, 5}), {11, -3, 23}) < kNear);
}

TEST_CASE("frame: turn is about w, then lean is about the turned u", "[property]") {
  const unsigned seed = GENERATE(range(1u, 21u));
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> any(-3, 3);
  const double turn = any(random), lean = any(random);
  const Vec3 u{0, 1, 0}, v{0, 0, 1}, w = cross(u, v);
  const Frame frame = frame_of({{5, 6, 7}, u, v, {turn}, {lean}});
  const Vec3 turned_u = rotated(u, w, turn), turned_v = rotated(v, w, turn);
  CHECK(apart(frame.u, turned_u) < kNear);
  CHECK(apart(frame.v, rotated(turned_v, turned_u, lean)) < kNear);
  CHECK(apart(frame.w, rotated(w, turned_u, lean)) < kNear);
}

TEST_CASE("frame: from the piece into the room and back is where one began", "[property]") {
  const unsigned seed = GENERATE(range(1u, 21u));
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> any(-500, 500);
  const Frame frame = frame_of({{any(random), any(random), any(random)},
                                {1, 0, 0},
                                {0, 1, 0},
                                {any(random)},
                                {any(random)}});
  const Vec3 p{any(random), any(random), any(random)};
  CHECK(apart(frame.piece_from_room(frame.room_from_piece(p)), p) < kNear);
}

TEST_CASE("frame: a quarter turn is exact") {
  const Frame frame = frame_of({{}, {1, 0, 0}, {0, 1, 0}, degrees(90), degrees(90)});
  CHECK(frame.u.x == 0);
  CHECK(frame.u.y == 1);
  CHECK(frame.v.z == 1);
  CHECK(frame.w.x == 1);
}

TEST_CASE("pieces: copies are numbered and stand a step apart, a single part has its own name") {
  Part rung = part_named("rung", 355, 32), deck = part_named("deck", 1000, 900);
  rung.repeat = Repeat{3, {0, 0, 273}};
  const Design design = design_of({rung, deck});
  const std::vector<Piece> pieces = pieces_of(design);
  REQUIRE(pieces.size() == 4);
  for (int copy = 1; copy <= 3; ++copy) {
    const Piece& piece = pieces[copy - 1];
    CHECK(piece.name == "rung " + std::to_string(copy));
    CHECK(piece.copy == copy);
    CHECK(piece.part == 0);
    CHECK(apart(piece.frame.at, {100, 200, 300 + 273.0 * (copy - 1)}) < kNear);
  }
  CHECK(pieces[3].name == "deck");
  CHECK(pieces[3].copy == 0);
  CHECK(pieces[3].thickness == 18);
  CHECK(pieces[3].drawn == &design.parts[1]);
}

TEST_CASE("pieces: a name means one copy, its part's name all of them, another name none") {
  Part rung = part_named("rung", 355, 32);
  rung.repeat = Repeat{3, {0, 0, 273}};
  const Design design = design_of({part_named("deck", 1000, 900), rung});
  const std::vector<Piece> pieces = pieces_of(design);
  CHECK(pieces_named(pieces, design, "rung") == std::vector<int>{1, 2, 3});
  CHECK(pieces_named(pieces, design, "rung 2") == std::vector<int>{2});
  CHECK(pieces_named(pieces, design, "deck") == std::vector<int>{0});
  CHECK(pieces_named(pieces, design, "rung 4").empty());
}

TEST_CASE("walls: only a name before \" wall\" is one") {
  CHECK(wall_named("left wall") == "left");
  CHECK(wall_named("chimney breast wall") == "chimney breast");
  CHECK(wall_named("floor").empty());
  CHECK(wall_named(" wall").empty());
  CHECK(wall_named("wall").empty());
}
