// Order, unit and mirror image change nothing but names and signs.
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>

#include "mirror.h"
#include "survey/adjustment.h"
#include "true_room.h"

using namespace nook;
using namespace nook::test;

namespace {

constexpr double kSame = 1e-9;

// A corner with everything that a two-wall survey may hold.
Survey corner_survey(std::uint64_t seed) {
  Random random(seed);
  const Kind kind;
  const TrueRoom room = true_room(kind, random);
  Person person(room, kind, random);
  SurveyBuilder b;
  b.survey = person.careful(3, 2);
  person.take_straightedge(b, 1, 100, 1319, 400);
  b.square(0, 600, 9).angle(0, 91.1, 300);
  b.length(0, {2400, 2401}).length(1, {2000});
  b.drop(0, 300, 200, 1001)
      .drop(0, 1500, 200, 1004)
      .drop(1, 700, 300, 998)
      .drop(1, 1700, 250, 1003);
  b.rise(0, 300, 200, 1400).rise(1, 1500, 200, 1404).rise(1, 400, 200, 1404);
  b.mark_named("door").mark_named("sill");
  b.span("left/right", "door", {2600})
      .span("door", "sill", {900})
      .span("left/right", "sill", {2100});
  b.survey.corners[0].buildup = Buildup{millimetres(2), millimetres(150)};
  return b.survey;
}

// Left, back and right wall with the back wall read from both corners.
Survey alcove_survey() {
  SurveyBuilder b({"left", "back", "right"});
  b.diagonal(0, 600, 800, {1003, 1002}).diagonal(1, 800, 600, {996});
  b.diagonal(0, 500, 500, {709}).diagonal(1, 700, 700, {986, 985});
  b.length(1, {1751, 1750}).across(300, 1746).across(700, 1749, 400);
  for (int wall = 0; wall < 3; ++wall) {
    b.level(wall, 400, 100, 1300, 3 + wall, wall != 1);
    b.plumb(wall, 300, {{100, 50}, {900, 52}, {1700, 49}});
    b.string(wall, 1000, {{50, 40}, {350, 42}, {700, 41}});
  }
  b.level(1, 500, 100, 1300, 4);
  b.survey.walls[1].levels.back().from_right = true;
  b.drop(0, 300, 200, 1001).drop(1, 500, 200, 1004).drop(2, 300, 300, 998);
  return b.survey;
}

using ById = std::map<std::string, ReadingReport>;
ById by_id(const Adjustment& adjusted) {
  ById out;
  for (const ReadingReport& reading : adjusted.report().readings) out[reading.id] = reading;
  return out;
}

void check_readings(const Adjustment& a, const Adjustment& b) {
  const ById first = by_id(a), second = by_id(b);
  REQUIRE(first.size() == second.size());
  for (const auto& [id, one] : first) {
    INFO(id);
    const ReadingReport& other = second.at(id);
    CHECK(one.residual_mm == Approx(other.residual_mm).margin(kSame));
    CHECK(one.redundancy == Approx(other.redundancy).margin(kSame));
    CHECK(one.adjusted_sd_mm == Approx(other.adjusted_sd_mm).margin(kSame));
    REQUIRE(one.w.has_value() == other.w.has_value());
    if (one.w) CHECK(*one.w == Approx(*other.w).margin(1e-7));
  }
  CHECK(a.report().chi2 == Approx(b.report().chi2).margin(1e-7));
  CHECK(a.report().dof == b.report().dof);
  CHECK(a.report().flatness_sd_mm == b.report().flatness_sd_mm);
  const auto ours = a.measure_next({}, 5), theirs = b.measure_next({}, 5);
  REQUIRE(ours.size() == theirs.size());
  for (std::size_t i = 0; i < ours.size(); ++i)
    CHECK(ours[i].gain == Approx(theirs[i].gain).margin(1e-7));
}

// Wall k of one room is wall `other` of the other, counted from its other end if between corners.
void check_wall(const RoomShape& a, int k, const RoomShape& b, int other) {
  const bool between = k > 0 && k + 1 < static_cast<int>(a.walls.size());
  const WallShape &one = a.walls[k], &two = b.walls[other];
  INFO("wall " << one.name);
  CHECK(one.lean == Approx(two.lean).margin(1e-12));
  for (const double along : {20.0, 700.0, 1500.0})
    for (const double z : {0.0, 900.0, 2000.0})
      CHECK(one.out_at(along, z) ==
            Approx(two.out_at(between ? one.length - along : along, z)).margin(kSame));
}

void check_mirrored(const RoomShape& a, const RoomShape& b) {
  const int walls = static_cast<int>(a.walls.size());
  for (int k = 0; k < walls; ++k) check_wall(a, k, b, walls - 1 - k);
}

// Numbers of a room that a mirror leaves as they are, both walls' in the same order.
std::vector<double> signature(const RoomShape& room, bool turned) {
  const auto& w = room.walls;
  const auto& first = turned ? w.back() : w.front();
  const auto& last = turned ? w.front() : w.back();
  const double angle = dot(first.along, last.along);
  const Vec2 spot = w.size() == 2 ? (turned ? w[1] : w[0]).room_from_wall(900, 400) : Vec2{};
  return {angle,     first.out_at(400, 900), last.out_at(400, 900), first.out_at(1500, 100),
          last.lean, room.floor.z(spot)};
}

void check_draws(const Adjustment& a, const Adjustment& b) {
  std::vector<std::vector<double>> first, second;
  for (const RoomShape& room : a.draws(40)) first.push_back(signature(room, false));
  for (const RoomShape& room : b.draws(40)) second.push_back(signature(room, true));
  std::sort(first.begin(), first.end());
  std::sort(second.begin(), second.end());
  for (std::size_t i = 0; i < first.size(); ++i)
    for (std::size_t j = 0; j < first[i].size(); ++j)
      CHECK(first[i][j] == Approx(second[i][j]).margin(1e-7));
}

}  // namespace

TEST_CASE("order of readings changes nothing", "[property]") {
  std::mt19937_64 random(5);
  for (const Survey& survey : {corner_survey(41), alcove_survey()}) {
    const Adjustment a = adjust(survey), b = adjust(shuffled(survey, random));
    check_readings(a, b);
    for (std::size_t k = 0; k < a.room().walls.size(); ++k)
      CHECK(a.room().walls[k].out_at(700, 900) ==
            Approx(b.room().walls[k].out_at(700, 900)).margin(kSame));
    const auto one = a.draws(8), two = b.draws(8);
    for (std::size_t i = 0; i < one.size(); ++i)
      CHECK(one[i].walls[1].out_at(700, 900) ==
            Approx(two[i].walls[1].out_at(700, 900)).margin(1e-7));
  }
}

TEST_CASE("a corner's mirror image changes names and sides only", "[property]") {
  for (const std::uint64_t seed : {41, 42, 43}) {
    const Survey survey = corner_survey(seed);
    const Adjustment a = adjust(survey), b = adjust(mirrored(survey));
    REQUIRE(a.complete());
    check_readings(a, b);
    check_mirrored(a.room(), b.room());
    CHECK(a.report().corners[0].angle_deg.value ==
          Approx(b.report().corners[0].angle_deg.value).margin(kSame));
    const auto one = a.expected_diagonal(0, 800, 1300, 500);
    const auto two = b.expected_diagonal(0, 1300, 800, 500);
    REQUIRE((one && two));
    CHECK(one->value == Approx(two->value).margin(kSame));
    CHECK(one->sd == Approx(two->sd).margin(kSame));
    const Vec2 spot = a.room().walls[0].room_from_wall(900, 500);
    const Vec2 image = b.room().walls[1].room_from_wall(900, 500);
    CHECK(a.room().floor.z(spot) == Approx(b.room().floor.z(image)).margin(kSame));
    REQUIRE((a.room().ceiling && b.room().ceiling));
    CHECK(a.room().ceiling->z(spot) == Approx(b.room().ceiling->z(image)).margin(kSame));
    check_draws(a, b);
  }
}

TEST_CASE("an alcove's mirror image changes names and sides only", "[property]") {
  const Survey survey = alcove_survey();
  for (const int origin : {0, 1}) {
    const Adjustment a = adjust(survey, origin), b = adjust(mirrored(survey), 1 - origin);
    REQUIRE(a.complete());
    check_readings(a, b);
    check_mirrored(a.room(), b.room());
    check_draws(a, b);
  }
}

TEST_CASE("an alcove adjusted from either corner is the same room") {
  Survey level = alcove_survey();  // heights count from the same floor in both
  level.floor.down.clear();
  const Adjustment a = adjust(level, 0), b = adjust(level, 1);
  for (int k = 0; k < 3; ++k)
    CHECK(a.room().walls[k].out_at(500, 800) ==
          Approx(b.room().walls[k].out_at(500, 800)).margin(0.01));
  for (int k = 0; k < 2; ++k)
    CHECK(a.report().corners[k].angle_deg.value ==
          Approx(b.report().corners[k].angle_deg.value).margin(1e-4));
}

TEST_CASE("the unit that the file is written in changes nothing", "[property]") {
  for (const Survey& survey : {corner_survey(45), alcove_survey()}) {
    Survey other = survey;
    other.units = survey.units == Unit::inch ? Unit::cm : Unit::inch;
    const Adjustment a = adjust(survey), b = adjust(other);
    const ById first = by_id(a), second = by_id(b);
    REQUIRE(first.size() == second.size());
    for (const auto& [id, one] : first) {
      CHECK(one.adjusted_mm == Approx(second.at(id).adjusted_mm).margin(kSame));
      CHECK(one.redundancy == Approx(second.at(id).redundancy).margin(kSame));
    }
    CHECK(a.report().chi2 == Approx(b.report().chi2).margin(1e-9));
  }
}

TEST_CASE("the same numbers on every run") {
  const Survey survey = corner_survey(44);
  const auto one = adjust(survey).draws(6), two = adjust(survey).draws(6);
  for (std::size_t i = 0; i < one.size(); ++i) {
    CHECK(one[i].walls[0].field.weights == two[i].walls[0].field.weights);
    CHECK(one[i].walls[1].along == two[i].walls[1].along);
  }
}
