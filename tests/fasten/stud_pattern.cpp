// The even spacing found among studs that follow it, stray ones and none.
#include "fasten/stud_pattern.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace nook;

TEST_CASE("stud pattern: studs on 16 in give spacing, phase and a number each") {
  const auto p = pattern_of({{390, 1}, {796.4, 1}, {1202.8, 1}}, 406.4);
  REQUIRE(p);
  CHECK(p->certainty > .95);
  CHECK_THAT(p->spacing, Catch::WithinAbs(406.4, .1));
  REQUIRE((p->number[0] && p->number[2]));
  CHECK(*p->number[2] - *p->number[0] == 2);
  const int next = *p->number[2] + 1;
  CHECK_THAT(p->centre(next), Catch::WithinAbs(1609.2, .5));
  // Three places known to 3 mm jitter and 1 mm each: the next one is less sure than the jitter.
  CHECK(p->sd(next) > 3);
  CHECK(p->sd(next) < 7);
}

TEST_CASE("stud pattern: an extra stud stays outside") {
  const auto p = pattern_of({{390, 1}, {560, 1}, {796.4, 1}, {1202.8, 1}}, 406.4);
  REQUIRE(p);
  CHECK_FALSE(p->number[1]);
  CHECK(p->number[0]);
  CHECK(p->certainty > .9);
}

TEST_CASE("stud pattern: one stud and a spacing are sure nine times in ten") {
  const auto p = pattern_of({{390, 1}}, 406.4);
  REQUIRE(p);
  CHECK_THAT(p->certainty, Catch::WithinAbs(.9, 1e-9));
}

TEST_CASE("stud pattern: irregular studs make no pattern to build on") {
  const auto p = pattern_of({{300, 1}, {610, 1}, {1015, 1}, {1290, 1}}, std::nullopt);
  REQUIRE(p);
  CHECK(p->certainty < .55);
}

TEST_CASE("stud pattern: without a nominal spacing the usual ones are weighed") {
  const auto inches16 = pattern_of({{390, 1}, {796, 1}, {1203, 1}, {1609, 1}}, std::nullopt);
  REQUIRE(inches16);
  CHECK_THAT(inches16->spacing, Catch::WithinAbs(406.4, 1));
  const auto metric = pattern_of({{390, 1}, {990, 1}, {1590, 1}, {2190, 1}}, std::nullopt);
  REQUIRE(metric);
  CHECK_THAT(metric->spacing, Catch::WithinAbs(600, 1));
}

TEST_CASE("stud pattern: a mirrored wall has the mirrored pattern", "[property]") {
  const std::vector<Measured> found = {{391, 1}, {560, 2}, {795, 1.5}, {1206, 4}};
  std::vector<Measured> mirrored;
  for (auto s = found.rbegin(); s != found.rend(); ++s)
    mirrored.push_back({3000 - s->value, s->sd});
  const auto p = pattern_of(found, 406.4), q = pattern_of(mirrored, 406.4);
  REQUIRE((p && q));
  CHECK_THAT(q->spacing, Catch::WithinAbs(p->spacing, 1e-9));
  CHECK_THAT(q->certainty, Catch::WithinAbs(p->certainty, 1e-9));
  const double turns = (3000 - q->phase - p->phase) / p->spacing;
  CHECK_THAT(turns, Catch::WithinAbs(std::round(turns), 1e-6));
}

TEST_CASE("stud pattern: nothing found, no pattern") {
  CHECK_FALSE(pattern_of({}, 406.4));
  CHECK_FALSE(pattern_of({{390, 1}}, 12.0));
}

TEST_CASE("stud pattern: a place a hundred thousand bays on has its sd too") {
  StudPattern p;
  p.var_spacing = 1e-6;
  CHECK_THAT(p.sd(100000), Catch::WithinAbs(100, 1));
}
