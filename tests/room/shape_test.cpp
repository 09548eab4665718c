// Corners, marks and surfaces of concrete rooms against plain geometry.
#include <catch2/catch.hpp>
#include <cmath>

#include "base/length.h"
#include "room/baseboard.h"
#include "room/shape.h"

using namespace nook;

namespace {

WallShape wall(Vec2 start, double heading_deg, bool left_wall, double length) {
  const Direction d = direction(degrees(heading_deg));
  WallShape out;
  out.start = start;
  out.along = {d.cos, d.sin};
  out.out = left_wall ? left_of(out.along) : -left_of(out.along);
  out.length = length;
  return out;
}

RoomShape corner(double angle_deg) {
  RoomShape room;
  room.walls = {wall({0, 0}, 0, true, 3000), wall({0, 0}, angle_deg, false, 3000)};
  return room;
}

// Left, back (2 m) and right wall of a square alcove in the frame of its left corner.
RoomShape alcove() {
  RoomShape room;
  room.walls = {wall({0, 0}, 0, true, 1000), wall({0, 0}, 90, false, 2000),
                wall({0, 2000}, 0, false, 1000)};
  return room;
}

Field bumpy(double scale) {
  Field field;
  field.basis = std::make_shared<FieldBasis>(Vec2{-200, -200}, Vec2{3200, 2640}, 400);
  for (int k = 0; k < field.basis->size(); ++k)
    field.weights.push_back(scale * field.basis->prior_sd()[k] * std::sin(3.1 * k + 1));
  return field;
}

}  // namespace

TEST_CASE("corner: leaning walls meet where their planes cross") {
  RoomShape room = corner(90);
  room.walls[0].lean = 0.004;
  room.walls[1].lean = -0.003;
  const Vec2 p = room.corner_at(0, 1219.2);
  CHECK(p.x == Approx(-0.003 * 1219.2).margin(1e-9));
  CHECK(p.y == Approx(0.004 * 1219.2).margin(1e-9));
  CHECK(room.corner_along(0, 0, 1219.2) == Approx(p.x).margin(1e-9));
  CHECK(room.corner_along(0, 1, 1219.2) == Approx(p.y).margin(1e-9));
}

TEST_CASE("corner: in an open corner each lean moves it along both walls") {
  const double angle = degrees(100).rad, left = 6, right = 2;
  RoomShape room = corner(100);
  room.walls[0].lean = left / 1000;
  room.walls[1].lean = right / 1000;
  CHECK(room.corner_along(0, 0, 1000) ==
        Approx((right + left * std::cos(angle)) / std::sin(angle)).margin(1e-9));
  CHECK(room.corner_along(0, 1, 1000) ==
        Approx((left + right * std::cos(angle)) / std::sin(angle)).margin(1e-9));
}

TEST_CASE("corner: on bumpy walls it lies on both surfaces") {
  RoomShape room = corner(91.4);
  room.walls[0].field = bumpy(2);
  room.walls[1].field = bumpy(-3);
  for (const double z : {0.0, 700.0, 2100.0}) {
    const Vec2 p = room.corner_at(0, z);
    for (const WallShape& w : room.walls) {
      const Vec2 on = w.wall_from_room(p);
      CHECK(on.y == Approx(w.out_at(on.x, z)).margin(1e-8));
    }
  }
}

TEST_CASE("readings along a wall count from the real corner, and back") {
  RoomShape room = alcove();
  room.walls[0].lean = 0.01;
  room.walls[1].lean = -0.005;
  room.walls[2].lean = 0.002;
  CHECK(room.base_along(0, 500, 1000) == Approx(500 - 5).margin(1e-9));
  CHECK(room.base_along(1, 500, 1000) == Approx(500 + 10).margin(1e-9));
  CHECK(room.base_along(1, 500, 1000, true) == Approx(2000 - 2 - 500).margin(1e-9));
  CHECK(room.base_along(2, 500, 1000) == Approx(500 - 5).margin(1e-9));
  for (const bool from_right : {false, true})
    CHECK(room.read_along(1, room.base_along(1, 321, 777, from_right), 777, from_right) ==
          Approx(321).margin(1e-9));
}

TEST_CASE("a lone wall counts from its own start") {
  RoomShape room;
  room.walls = {wall({0, 0}, 0, true, 3000)};
  CHECK(room.base_along(0, 700, 1000) == 700);
  CHECK(room.read_along(0, 700, 1000) == 700);
}

TEST_CASE("mud fades out from the corner as it stands at that height") {
  RoomShape room = corner(90);
  for (WallShape& w : room.walls) {
    w.buildup_proud = 3;
    w.buildup_reach = 150;
  }
  room.walls[0].lean = 0.01;
  room.walls[1].corner_drift = 0.01;  // the left wall's lean moves the corner along the right wall
  CHECK(room.walls[1].mud_at(20, 2000) == Approx(3));
  CHECK(room.walls[1].mud_at(95, 2000) == Approx(1.5));
  CHECK(room.walls[1].mud_at(170, 2000) == Approx(0).margin(1e-12));
  CHECK(room.walls[0].out_at(75, 0) == Approx(1.5));
}

TEST_CASE("mud at a far corner counts from the wall's other end") {
  WallShape w = wall({0, 0}, 90, false, 2000);
  w.far_buildup_proud = 4;
  w.far_buildup_reach = 100;
  CHECK(w.mud_at(1950, 0) == Approx(2));
  CHECK(w.mud_at(1800, 0) == 0);
}

TEST_CASE("a level surface is 0 at the origin and slopes") {
  LevelSurface floor;
  floor.slope = {0.002, -0.001};
  floor.field = bumpy(5);
  floor.field_axis = {0.6, 0.8};
  CHECK(floor.z({0, 0}) == Approx(0).margin(1e-12));
  floor.field = {};
  CHECK(floor.z({1000, 2000}) == Approx(0).margin(1e-12));
}

TEST_CASE("a field's axes turn with it") {
  LevelSurface floor;
  floor.field_axis = {0.6, 0.8};
  const Vec2 p = floor.field_from_room({0.6, 0.8});
  CHECK(p.x == Approx(1));
  CHECK(p.y == Approx(0).margin(1e-15));
}

TEST_CASE("baseboard: square, molded, with a shoe") {
  Baseboard board;
  board.height = millimetres(140);
  board.thickness = millimetres(14);
  board.shoe = millimetres(12);
  CHECK(stand_out(board, millimetres(5)).mm == 26);
  CHECK(stand_out(board, millimetres(50)).mm == 14);
  CHECK(stand_out(board, millimetres(140)).mm == 14);
  CHECK(stand_out(board, millimetres(141)).mm == 0);
  board.profile = {{millimetres(0), millimetres(14)},
                   {millimetres(100), millimetres(14)},
                   {millimetres(140), millimetres(6)}};
  CHECK(stand_out(board, millimetres(50)).mm == 14);
  CHECK(stand_out(board, millimetres(120)).mm == Approx(10));
  CHECK(stand_out(board, millimetres(140)).mm == Approx(6));
}
