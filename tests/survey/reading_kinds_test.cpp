// Each kind of reading in rooms of plain geometry: what it says of the room, to the sign.
#include <catch2/catch.hpp>
#include <cmath>

#include "survey/adjustment.h"
#include "survey/room_report.h"
#include "survey_builder.h"

using namespace nook;
using nook::test::SurveyBuilder;

namespace {

SurveyBuilder exact(std::vector<std::string> walls = {"left", "right"}) {
  SurveyBuilder b(std::move(walls));
  b.survey.flatness.sd = millimetres(0);
  b.sd = millimetres(1e-4);
  return b;
}

double lean(const Adjustment& adjusted, int wall) {
  return adjusted.report().walls[static_cast<std::size_t>(wall)].lean_mm_per_m.value;
}

void check_agrees(const Adjustment& adjusted) {
  for (const ReadingReport& reading : adjusted.report().readings) {
    INFO(reading.id);
    CHECK(reading.residual_mm == Approx(0).margin(1e-3));
  }
}

}  // namespace

TEST_CASE("level: a gap at the top leans away, at the bottom into the room") {
  SurveyBuilder b = exact();
  b.diagonal(0, 900, 1200, {1500});
  b.level(0, 600, 100, 1300, 6, true).level(1, 600, 100, 1300, 3, false);
  const Adjustment adjusted = adjust(b.survey);
  CHECK(lean(adjusted, 0) == Approx(-5).margin(1e-3));
  CHECK(lean(adjusted, 1) == Approx(2.5).margin(1e-3));
}

TEST_CASE("level: from and to may be given either way up") {
  SurveyBuilder b = exact();
  b.diagonal(0, 900, 1200, {1500}).level(0, 600, 1300, 100, 6, true).level(1, 600, 100, 1300, 0);
  CHECK(lean(adjust(b.survey), 0) == Approx(-5).margin(1e-3));
}

TEST_CASE("plumb line: a growing distance is a wall that leans away") {
  SurveyBuilder b = exact();
  b.diagonal(0, 900, 1200, {1500});
  b.plumb(0, 600, {{200, 50}, {1200, 54}, {2200, 58}}).plumb(1, 600, {{200, 50}, {2200, 46}});
  const Adjustment adjusted = adjust(b.survey);
  CHECK(lean(adjusted, 0) == Approx(-4).margin(1e-3));
  CHECK(lean(adjusted, 1) == Approx(2).margin(1e-3));
  check_agrees(adjusted);
}

TEST_CASE("plumb line on the board: the board's stand-out is taken off") {
  // Heights 2, 48, 90 in; 1 1/2 on a 9/16 board is 2 1/16 to the wall: it leans 3/8 in 88.
  SurveyBuilder b = exact();
  Baseboard board;
  board.height = inches(5.25);
  board.thickness = inches(9.0 / 16);
  b.survey.walls[0].baseboard = board;
  b.diagonal(0, 900, 1200, {1500}).level(1, 600, 200, 1300, 0);
  b.plumb(0, 600, {{50.8, inches(1.5).mm}, {1219.2, inches(2.25).mm}, {2286, inches(2.4375).mm}});
  auto& line = b.survey.walls[0].plumbs[0].line;
  line[0].reading[0].on = Face::baseboard;
  for (Station& station : line) station.reading[0].sd = millimetres(0.5);
  const Adjustment adjusted = adjust(b.survey);
  const double fall = -lean(adjusted, 0) * (2286 - 50.8) / 1000;
  CHECK(fall == Approx(inches(3.0 / 8).mm).margin(1));  // the middle reading is off the line
  b.survey.walls[0].plumbs[0].line.erase(b.survey.walls[0].plumbs[0].line.begin() + 1);
  CHECK(-lean(adjust(b.survey), 0) * (2286 - 50.8) / 1000 ==
        Approx(inches(3.0 / 8).mm).margin(0.05));
}

TEST_CASE("string: a smaller distance is a hump") {
  SurveyBuilder b = exact();
  b.survey.flatness.sd = millimetres(2);
  b.diagonal(0, 900, 1200, {1500});
  b.string(0, 1000, {{100, 40}, {600, 40}, {1100, 34}, {1600, 40}, {2100, 40}});
  const Adjustment adjusted = adjust(b.survey);
  const WallShape& wall = adjusted.room().walls[0];
  const double ends = (wall.out_at(600, 1000) + wall.out_at(1600, 1000)) / 2;
  CHECK(wall.out_at(1100, 1000) - ends == Approx(6).margin(0.05));
  CHECK(adjusted.report().walls[0].hump_mm > 2);
}

TEST_CASE("straightedge: a gap between two touches is a hollow") {
  SurveyBuilder b = exact();
  b.survey.flatness.sd = millimetres(2);
  b.diagonal(0, 900, 1200, {1500}).straightedge(1, 800, {{100, 0}, {700, 5}, {1300, 0}});
  const WallShape wall = adjust(b.survey).room().walls[1];
  CHECK((wall.out_at(100, 800) + wall.out_at(1300, 800)) / 2 - wall.out_at(700, 800) ==
        Approx(5).margin(0.01));
}

TEST_CASE("square: a gap at the tip is an open corner, at the heel a closed one") {
  for (const bool tip : {true, false}) {
    SurveyBuilder b = exact();
    b.square(0, 600, 14.7, tip);
    const double open = std::atan(14.7 / 600) * (tip ? 1 : -1);
    CHECK(adjust(b.survey).report().corners[0].angle_deg.value ==
          Approx(90 + in_degrees({open})).margin(1e-6));
  }
}

TEST_CASE("angle finder: 0.8 mm over its blade, shown as millimeters at the blade's end") {
  SurveyBuilder b;
  b.survey.flatness.sd = millimetres(0);
  b.angle(0, 91.3, 300);
  const RoomReport report = adjust(b.survey).report();
  CHECK(report.corners[0].angle_deg.value == Approx(91.3).margin(1e-9));
  CHECK(report.corners[0].angle_deg.sd == Approx(in_degrees({0.8 / 300})).epsilon(1e-9));
  CHECK(report.readings[0].sd_mm == Approx(0.8));
  CHECK(*report.readings[0].blade_mm == 300);
}

TEST_CASE("diagonal high up on leaning walls counts from the real corner there") {
  SurveyBuilder b = exact();
  b.diagonal(0, 900, 1200, {1500}, 1000);
  b.level(0, 600, 100, 1300, 9.6, false).level(1, 600, 100, 1300, 4.8, true);  // 0.8 %, -0.4 %
  const Adjustment adjusted = adjust(b.survey);
  CHECK(adjusted.report().corners[0].angle_deg.value == Approx(90).margin(1e-6));
  CHECK(adjusted.room().corner_at(0, 2000).y == Approx(16).margin(1e-3));
  CHECK(adjusted.room().corner_at(0, 2000).x == Approx(-8).margin(1e-3));
  CHECK(adjusted.expected_diagonal(0, 300, 400, 2200)->value == Approx(500).margin(1e-6));
}

TEST_CASE("floor and ceiling: heights from the level line") {
  SurveyBuilder b = exact();
  b.diagonal(0, 900, 1200, {1500}).level(0, 500, 100, 1300, 0).level(1, 500, 100, 1300, 0);
  b.sd = millimetres(0.3);
  // Falls 4 mm in a metre along the left wall; the ceiling is level.
  for (const double x : {0.0, 500.0, 1000.0, 1500.0, 2000.0})
    for (const double y : {10.0, 800.0}) {
      b.drop(0, x, y, 1000 + 0.004 * x);
      b.rise(0, x, y, 1400);
    }
  const Adjustment adjusted = adjust(b.survey);
  REQUIRE(adjusted.complete());
  CHECK(*adjusted.room().line_z == Approx(1000).margin(1.5));
  const double fall = adjusted.room().floor.z({500, 400}) - adjusted.room().floor.z({1500, 400});
  CHECK(fall == Approx(4).margin(0.5));
  CHECK(adjusted.room().ceiling->z({700, 700}) - *adjusted.room().line_z ==
        Approx(1400).margin(0.5));
}

TEST_CASE("heights from the level line are those heights less its own") {
  SurveyBuilder b = exact();
  b.diagonal(0, 900, 1200, {1500}).level(1, 500, 100, 1300, 0);
  b.level(0, 500, -900, 300, 6, true);  // from 100 to 1300 above a floor 1000 below the line
  auto& level = b.survey.walls[0].levels[0];
  level.from.from_line = level.to.from_line = true;
  const Adjustment without = adjust(b.survey);
  CHECK(!without.complete());
  CHECK(without.report().missing[0].what.find("level line") != std::string::npos);
  b.drop(0, 100, 100, 1000);
  const Adjustment adjusted = adjust(b.survey);
  CHECK(adjusted.complete());
  CHECK(lean(adjusted, 0) == Approx(-5).margin(1e-3));
}

TEST_CASE("tape: its scale is shared, repeats do not average it away") {
  SurveyBuilder b({"left", "back", "right"});
  b.length(1, std::vector<double>(16, 2400.0));
  const RoomReport report = adjust(b.survey).report();
  const double tape = (0.3 + 0.2 * 3) / std::sqrt(3.0);  // class II, 2.4 m rounded up to 3
  REQUIRE(report.walls[1].length_mm);
  CHECK(report.walls[1].length_mm->sd > tape);
  const double alone = std::hypot(1 / std::sqrt(12.0), 1.6);
  CHECK(report.readings[0].sd_mm == Approx(std::hypot(alone, tape)).epsilon(1e-12));
}

TEST_CASE("a reading's own sd replaces everything, the tape's share too") {
  SurveyBuilder b;
  b.sd = millimetres(0.7);
  b.diagonal(0, 900, 1200, {1500});
  const RoomReport report = adjust(b.survey).report();
  for (const ReadingReport& reading : report.readings)
    CHECK(reading.sd_mm == Approx(0.7).epsilon(1e-12));
}

TEST_CASE("mud that is told of is part of the room") {
  SurveyBuilder b = exact();
  b.survey.corners[0].buildup = Buildup{millimetres(4), millimetres(150)};
  b.diagonal(0, 900, 1200, {1500});
  for (const int wall : {0, 1}) b.level(wall, 500, 100, 1300, 0);
  const Adjustment adjusted = adjust(b.survey);
  // The marks count from the muddy corner, 4 mm out on both sides.
  const Vec2 corner = adjusted.room().corner_at(0, 1000);
  CHECK(corner.x == Approx(4).margin(0.15));
  CHECK(corner.y == Approx(4).margin(0.15));
  CHECK(adjusted.room().walls[0].out_at(400, 1000) == Approx(0).margin(1e-6));
}

TEST_CASE("a lone wall needs no corner") {
  SurveyBuilder b({"back"});
  b.length(0, {2400})
      .level(0, 500, 100, 1300, 6)
      .string(0, 900, {{100, 40}, {900, 41}, {1700, 40}});
  const Adjustment adjusted = adjust(b.survey);
  CHECK(adjusted.complete());
  CHECK(lean(adjusted, 0) == Approx(-5).margin(1.5));
  CHECK(adjusted.room().walls[0].point(700, 0).x == Approx(700));
  CHECK(adjusted.draws(8).size() == 8);
}

TEST_CASE("an empty survey says that nothing is measured yet") {
  SurveyBuilder b(std::vector<std::string>{});
  const Adjustment adjusted = adjust(b.survey);
  CHECK_FALSE(adjusted.complete());
  CHECK(adjusted.report().readings.empty());
  REQUIRE(adjusted.report().missing.size() == 1);
  CHECK(adjusted.report().missing[0].what.find("nothing is measured yet") == 0);
  CHECK(room_verdict(adjusted.report()) == Verdict::cannot_tell);
}
