// Alcoves: three walls, two corners, readings across.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <iostream>

#include "survey/adjustment.h"
#include "true_alcove.h"

using namespace nook;
using namespace nook::test;

namespace {

double third_side(double a, double b, double angle_deg) {
  return std::sqrt(a * a + b * b - 2 * a * b * std::cos(degrees(angle_deg).rad));
}

struct Tally {
  int inside = 0, all = 0, alarms = 0, rooms = 0, named = 0, in_set = 0;
};

// One inch too much in one straight tape of a doubled diagonal.
std::string spoiled(Survey& survey, Random& random) {
  auto& diagonals = survey.corners[even(random, 0, 1) < 0.5 ? 0 : 1].diagonals;
  auto& straight = diagonals[even(random, 0, 1) < 0.5 ? 0 : 1].straight;
  Reading& reading = straight[even(random, 0, 1) < 0.5 ? 0 : 1];
  reading.value.mm += 25.4;
  reading.given = written(reading.value, usual_rounding(Unit::mm));
  return reading.id;
}

void add_slip(Tally& tally, Survey survey, Random& random) {
  const std::string wrong = spoiled(survey, random);
  const auto suspects = adjust(survey).report().suspects;
  if (suspects.empty()) return;
  const auto& ids = suspects.front().ids;
  tally.named += ids.front() == wrong;
  tally.in_set += std::find(ids.begin(), ids.end(), wrong) != ids.end();
}

Tally tally_of(int rooms) {
  Random random(37);
  Tally tally;
  for (int i = 0; i < rooms; ++i) {
    const TrueAlcove room(Kind{}, random);
    const Survey survey = alcove_survey(room, random);
    const Adjustment adjusted = adjust(survey);
    REQUIRE(adjusted.complete());
    ++tally.rooms;
    tally.alarms += !adjusted.report().suspects.empty();
    for (const int k : {0, 1}) {
      const double a = even(random, 300, 900), b = even(random, 300, 900);
      const double z = even(random, 300, 1600);
      const auto found = adjusted.expected_diagonal(k, a, b, z);
      REQUIRE(found);
      tally.inside += std::abs(room.diagonal(k, a, b, z) - found->value) < kTwoSided95 * found->sd;
      ++tally.all;
    }
    add_slip(tally, survey, random);
  }
  return tally;
}

}  // namespace

TEST_CASE("alcove: exact readings give its angles, its length and its opening") {
  // Narrower in front: 89 and 88.5 degrees, 1200 at the back.
  SurveyBuilder b({"left", "back", "right"});
  b.survey.flatness.sd = millimetres(0);
  b.sd = millimetres(1e-4);
  b.diagonal(0, 400, 500, {third_side(400, 500, 89)});
  b.diagonal(1, 450, 300, {third_side(450, 300, 88.5)});
  b.length(1, {1200});
  const Adjustment adjusted = adjust(b.survey);
  REQUIRE(adjusted.complete());
  CHECK(adjusted.report().corners[0].angle_deg.value == Approx(89).margin(1e-7));
  CHECK(adjusted.report().corners[1].angle_deg.value == Approx(88.5).margin(1e-7));
  CHECK(adjusted.report().walls[1].length_mm->value == Approx(1200).margin(1e-6));
  const auto& walls = adjusted.room().walls;
  const Vec2 left = walls[0].room_from_wall(600, 0), right = walls[2].room_from_wall(600, 0);
  const double expected =
      1200 - 600 * std::cos(degrees(89).rad) - 600 * std::cos(degrees(88.5).rad);
  CHECK(right.y - left.y == Approx(expected).margin(0.2));  // along the back wall, nearly
  const Vec2 back = walls[1].along;
  CHECK(dot(right - left, back) == Approx(expected).margin(1e-6));
}

TEST_CASE("alcove: readings across stand for an angle") {
  SurveyBuilder b({"left", "back", "right"});
  b.survey.flatness.sd = millimetres(0);
  b.sd = millimetres(1e-4);
  b.diagonal(0, 400, 500, {third_side(400, 500, 90)}).length(1, {1200});
  b.across(600, 1200 - 600 / std::tan(degrees(88).rad));
  const Adjustment adjusted = adjust(b.survey);
  REQUIRE(adjusted.complete());
  CHECK(adjusted.report().corners[1].angle_deg.value == Approx(88).margin(1e-4));
}

TEST_CASE("alcove: its length is read between the real corners at its height") {
  SurveyBuilder b({"left", "back", "right"});
  b.survey.flatness.sd = millimetres(0);
  b.sd = millimetres(1e-4);
  b.diagonal(0, 400, 500, {third_side(400, 500, 90)})
      .diagonal(1, 400, 500, {third_side(400, 500, 90)});
  b.length(1, {1200}, 1000);
  b.level(0, 300, 100, 1100, 5, false).level(2, 300, 100, 1100, 5, false);  // both lean in
  b.level(1, 300, 100, 1100, 0);
  const Adjustment adjusted = adjust(b.survey);
  CHECK(adjusted.room().walls[1].length == Approx(1210).margin(1e-3));
  CHECK(adjusted.report().walls[1].length_mm->value == Approx(1200).margin(1e-4));
}

TEST_CASE("alcove: the right-hand corner of the back wall counts from there") {
  SurveyBuilder b({"left", "back", "right"});
  b.survey.flatness.sd = millimetres(2);
  b.sd = millimetres(0.05);
  b.diagonal(0, 400, 500, {third_side(400, 500, 90)})
      .diagonal(1, 400, 500, {third_side(400, 500, 90)});
  b.length(1, {2000});
  for (int wall = 0; wall < 3; ++wall) b.level(wall, 300, 100, 1300, 0);
  b.string(1, 1000, {{100, 40}, {500, 34}, {900, 40}, {1300, 40}, {1700, 40}});
  b.survey.walls[1].strings[0].from_right = true;
  const WallShape wall = adjust(b.survey).room().walls[1];
  const double hump =
      wall.out_at(1500, 1000) - (wall.out_at(1100, 1000) + wall.out_at(1900, 1000)) / 2;
  CHECK(hump == Approx(6).margin(0.3));
}

TEST_CASE("alcove: origin at either corner, x along its first wall away from it") {
  SurveyBuilder b({"left", "back", "right"});
  b.diagonal(0, 400, 500, {640.3}).diagonal(1, 400, 500, {640.3}).length(1, {1200});
  const RoomShape left = adjust(b.survey, 0).room(), right = adjust(b.survey, 1).room();
  CHECK(left.walls[0].along == Vec2{1, 0});
  CHECK(left.walls[1].start == Vec2{0, 0});
  CHECK(right.walls[1].along == Vec2{-1, 0});
  CHECK(right.walls[1].out.y == 1);
  CHECK(right.walls[2].start == Vec2{0, 0});
  CHECK(right.walls[1].room_from_wall(right.walls[1].length, 0).x == Approx(0).margin(1e-9));
}

TEST_CASE("alcoves in hundreds: foretold diagonals and slips, reported", "[property][release]") {
  const Tally tally = tally_of(200);
  const double share = double(tally.inside) / tally.all;
  std::cout << "  alcoves: inside " << share << ", false alarms " << tally.alarms << " of "
            << tally.rooms << ", a 1 in slip named first " << double(tally.named) / tally.rooms
            << ", in the set " << double(tally.in_set) / tally.rooms << "\n";
  CHECK(share > 0.90);
  CHECK(tally.alarms < 0.03 * tally.rooms + 1);
}
