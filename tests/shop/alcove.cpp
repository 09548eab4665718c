// Alcoves: what slides in, what has to be lowered or swung in, what cannot go in.
#include "shop/alcove_entry.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "sample.h"

using namespace nook;
using namespace nook::sample;
using Catch::WithinAbs;

namespace {

// A level board against the back wall: x along it, y = -depth in front of it, drawn in a frame
// whose room is below the back wall.
CarriedPiece board(double width, double depth, double thickness = 18) {
  return {"seat",
          {{0, -depth, 450}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
          rectangle(width, depth),
          thickness};
}
// An upright one, `gap` in front of the back wall.
CarriedPiece upright(double width, double height, double gap) {
  return {"panel", {{0, -gap, 0}, {1, 0, 0}, {0, 0, 1}, {0, -1, 0}}, rectangle(width, height), 18};
}

const std::vector<RoomShape> kNoDraws;

std::optional<Pass> entered(const CarriedPiece& piece, const RoomShape& room) {
  return enter_alcove(stance_of(piece.name, {piece}), {1}, {room, kNoDraws}, 0.95);
}

}  // namespace

TEST_CASE("alcove: as wide in front as behind - the tight board slides in") {
  const auto pass = entered(board(1200, 400), alcove(1200, 1200, 600));
  REQUIRE(pass);
  CHECK(pass->hold == Grip::slid_in);
  CHECK(pass->verdict == Verdict::fits);
  CHECK_THAT(pass->widest->value, WithinAbs(1200, 1e-9));
}

TEST_CASE("alcove: narrower in front - the tight board cannot slide in, and is lowered in") {
  // 1200 behind, 1188 at the front 600 out: at 400 the board is drawn 1200 and will be cut.
  const RoomShape room = alcove(1200, 1188, 600);
  const auto pass = entered(board(1200, 400), room);
  REQUIRE(pass);
  CHECK_THAT(pass->slides->value, WithinAbs(-12, 1e-6));
  CHECK_THAT(pass->widest->value, WithinAbs(1188, 1e-6));
  CHECK(pass->hold == Grip::lowered_in);
  CHECK(pass->verdict == Verdict::fits);
  // 6 mm are kept clear: 1200 cos t + 18 sin t = 1182, by a sweep.
  double raised = 0;
  for (double t = std::atan(18.0 / 1200); 1200 * std::cos(t) + 18 * std::sin(t) > 1182; t += 1e-6)
    raised = 1200 * std::sin(t);
  CHECK_THAT(pass->raised_mm, WithinAbs(raised, 0.01));
}

TEST_CASE("alcove: a board drawn as wide as the front slides in") {
  CarriedPiece narrow = board(1187, 400);
  narrow.frame.at.x = 6.5;
  const auto pass = entered(narrow, alcove(1200, 1188, 600));
  REQUIRE(pass);
  CHECK(pass->hold == Grip::slid_in);
  CHECK(pass->verdict == Verdict::fits);
  CHECK_THAT(pass->slides->value, WithinAbs(1, 1e-6));
}

TEST_CASE("alcove: a thick board jams when it is lowered between tight walls") {
  // 80 mm thick its diagonal is 2.7 mm longer than the board: there is no air for that.
  const auto pass = entered(board(1200, 400, 80), alcove(1200, 1180, 600));
  REQUIRE(pass);
  CHECK(pass->verdict == Verdict::does_not_fit);
  CHECK(pass->spare->value < 0);
}

TEST_CASE("alcove: an upright panel is swung in behind the narrow place") {
  const auto pass = entered(upright(1200, 700, 30), alcove(1200, 1190, 900));
  REQUIRE(pass);
  CHECK(pass->slides->value < -8);
  CHECK(pass->hold == Grip::swung_in);
}

TEST_CASE("alcove: a box that is tight behind can neither slide nor turn") {
  CarriedPiece box = board(1200, 400, 300);
  const auto pass = entered(box, alcove(1200, 1190, 600));
  REQUIRE(pass);
  CHECK(pass->hold == Grip::slid_in);
  CHECK(pass->verdict == Verdict::does_not_fit);
}

TEST_CASE("alcove: a narrow piece does not ask") {
  CHECK_FALSE(entered(board(700, 400), alcove(1200, 1190, 600)));
}

TEST_CASE("alcove: mirrored - gives the same air", "[property]") {
  RoomShape room = alcove(1200, 1188, 600);
  room.walls[0].lean = 0.004;
  RoomShape mirror = alcove(1200, 1188, 600);
  mirror.walls[2].lean = 0.004;
  const auto one = entered(board(1200, 400), room), other = entered(board(1200, 400), mirror);
  REQUIRE((one && other));
  CHECK_THAT(one->slides->value, WithinAbs(other->slides->value, 1e-9));
  CHECK_THAT(one->raised_mm, WithinAbs(other->raised_mm, 1e-9));
}
