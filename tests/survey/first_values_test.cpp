// First values by hand: angles by the law of cosines, lengths and heights by averages.
#include "survey/first_values.h"

#include <catch2/catch.hpp>
#include <numbers>

#include "survey/extents.h"
#include "survey_builder.h"

using namespace nook;
using Catch::WithinAbs;
using nook::test::SurveyBuilder;

namespace {

constexpr double kRight = std::numbers::pi / 2;

double in_deg(double rad) {
  return rad * 180 / std::numbers::pi;
}

}  // namespace

TEST_CASE("first values: a mean leaves out what is struck", "[reference]") {
  SurveyBuilder b;
  Readings readings{b.reading(10, "a"), b.reading(20, "b"), b.reading(90, "c")};
  readings[2].struck = true;
  CHECK(mean_or(readings, 7) == 15);
  readings[0].struck = readings[1].struck = true;
  CHECK(mean_or(readings, 7) == 7);
}

TEST_CASE("first values: the angle is the middle one of the diagonals", "[reference]") {
  SurveyBuilder b;
  CHECK(first_angle(b.survey, 0) == kRight);  // nothing read
  // 3-4-5, an equilateral triangle, and c^2 = a^2 + b^2 + ab: 120 degrees.
  b.diagonal(0, 300, 400, {500});
  CHECK_THAT(in_deg(first_angle(b.survey, 0)), WithinAbs(90, 1e-9));
  b.diagonal(0, 700, 700, {700});
  CHECK_THAT(in_deg(first_angle(b.survey, 0)), WithinAbs(75, 1e-9));  // of two, half-way
  b.diagonal(0, 300, 500, {700});
  CHECK_THAT(in_deg(first_angle(b.survey, 0)), WithinAbs(90, 1e-9));  // of 60, 90 and 120
  b.survey.corners[0].diagonals[0].first.struck = true;
  CHECK_THAT(in_deg(first_angle(b.survey, 0)), WithinAbs(90, 1e-9));  // of 60 and 120
}

TEST_CASE("first values: without a diagonal a square or an angle finder tells", "[reference]") {
  SurveyBuilder open, closed, finder;
  open.square(0, 600, 600 * std::tan(2 * kRight / 90));  // 2 degrees over the blade
  closed.square(0, 600, 600 * std::tan(2 * kRight / 90), false);
  finder.angle(0, 91.5, 300);
  CHECK_THAT(in_deg(first_angle(open.survey, 0)), WithinAbs(92, 1e-9));
  CHECK_THAT(in_deg(first_angle(closed.survey, 0)), WithinAbs(88, 1e-9));
  CHECK_THAT(in_deg(first_angle(finder.survey, 0)), WithinAbs(91.5, 1e-9));
  open.diagonal(0, 300, 400, {500});  // is better than the square
  CHECK_THAT(in_deg(first_angle(open.survey, 0)), WithinAbs(90, 1e-9));
}

TEST_CASE("first values: a wall is as long as was read, or holds all that was read on it") {
  SurveyBuilder b({"left", "back", "right"});
  CHECK(first_length(b.survey, 1) == 2440);  // a usual one: 8 ft
  b.string(1, 1000, {{100, 20}, {3000, 21}});
  CHECK(farthest_on(b.survey, 1) == 3000);
  CHECK(first_length(b.survey, 1) == 3300);  // 300 more
  b.across(500, 1900);
  CHECK(first_length(b.survey, 1) == 1900);  // from wall to wall
  b.length(1, {2000, 2010});
  CHECK(first_length(b.survey, 1) == 2005);
  b.diagonal(0, 1700, 4000, {4300});
  CHECK(farthest_on(b.survey, 0) == 1700);
  CHECK(farthest_on(b.survey, 1) == 4000);
  CHECK(first_length(b.survey, 0) == 2440);  // of an end wall the reading across says nothing
}

TEST_CASE("first values: line and ceiling from the drops; who uses the line") {
  SurveyBuilder b;
  CHECK_FALSE(uses_level_line(b.survey));
  CHECK(first_line(b.survey) == 1000);
  CHECK(first_ceiling(b.survey) == 2440);
  b.drop(0, 500, 100, 1100).drop(1, 500, 100, 1120);
  CHECK(uses_level_line(b.survey));
  CHECK(first_line(b.survey) == 1110);
  b.rise(0, 500, 100, 1300);
  CHECK(first_ceiling(b.survey) == 2410);

  SurveyBuilder level;
  level.level(0, 600, 100, 1300, 3);
  CHECK_FALSE(uses_level_line(level.survey));
  level.survey.walls[0].levels[0].to.from_line = true;
  CHECK(uses_level_line(level.survey));
}
