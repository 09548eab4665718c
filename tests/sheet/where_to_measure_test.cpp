// Sketches of readings still to be taken.
#include "sheet/where_to_measure.h"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace nook;

namespace {

constexpr Canvas kPaper{180, 95, 4}, kPhone{94, 95, 3.4};

NextReading reading(NextReading::Kind kind, int of, Vec2 along, double up) {
  NextReading r;
  r.kind = kind;
  r.of = of;
  r.at_mm = along.x, r.to_mm = along.y, r.up_mm = up;
  return r;
}

Survey corner_room() {
  Survey survey;
  survey.walls.resize(2);
  survey.walls[0].name = "left";
  survey.walls[1].name = "right";
  return survey;
}

const std::vector<NextReading> kReadings = {
    reading(NextReading::Kind::diagonal, 0, {1200, 1500}, 300),
    reading(NextReading::Kind::diagonal, 0, {1200, 1500}, 1700),
    reading(NextReading::Kind::level, 0, {300, 0}, 100),
    reading(NextReading::Kind::straightedge, 0, {700, 1900}, 1000),
    reading(NextReading::Kind::level, 1, {900, 0}, 100)};

std::vector<Drawing> sketches(const Canvas& canvas) {
  const Survey survey = corner_room();
  const Rounding mm = usual_rounding(Unit::mm);
  return {where_in_corner(survey, 0, in_corner(kReadings, 0), canvas, mm),
          where_on_wall(survey, 0, on_wall(kReadings, 0), canvas, mm),
          where_on_wall(survey, 1, on_wall(kReadings, 1), canvas, mm)};
}

// The sticks of a sketch, each from its first to its last point.
std::vector<Polyline> sticks(const Drawing& drawing) {
  std::vector<Polyline> found;
  for (const Layer& layer : drawing.layers)
    for (const DrawnShape& shape : layer.shapes)
      if (shape.name == "stick") found.push_back(std::get<Polyline>(shape.form));
  return found;
}

}  // namespace

TEST_CASE("where to measure: readings keep the numbers of their list") {
  CHECK(in_corner(kReadings, 0).size() == 2);
  REQUIRE(on_wall(kReadings, 0).size() == 2);
  CHECK(on_wall(kReadings, 0)[0].number == 3);
  CHECK(on_wall(kReadings, 1)[0].number == 5);
}

TEST_CASE(
    "where to measure: the left wall's corner is on the right, the right wall's on the left") {
  const std::vector<Drawing> all = sketches(kPaper);
  const std::vector<Polyline> left = sticks(all[1]), right = sticks(all[2]);
  REQUIRE(left.size() == 2);
  REQUIRE(right.size() == 1);
  CHECK(left[0].points[0].x == Approx(-300));
  CHECK(left[0].points[1].y - left[0].points[0].y == Approx(inches(48).mm));  // the level's length
  CHECK(left[1].points[1].x == Approx(-1900));
  CHECK(right[0].points[0].x == Approx(900));
}

TEST_CASE("where to measure: no words strike through a measuring line") {
  const Canvas canvas = GENERATE(kPaper, kPhone, Canvas{92, 95, 4});
  std::vector<Drawing> all = sketches(canvas);
  const std::vector<NextReading> near = {reading(NextReading::Kind::diagonal, 0, {457, 914}, 1700),
                                         reading(NextReading::Kind::diagonal, 0, {457, 914}, 300),
                                         reading(NextReading::Kind::diagonal, 0, {457, 610}, 300)};
  all.push_back(
      where_in_corner(corner_room(), 0, in_corner(near, 0), canvas, usual_rounding(Unit::inch)));
  for (const Drawing& drawing : all)
    for (const Text& text : texts_of(drawing)) {
      INFO(drawing.title << ": " << text.words);
      const PageBox box = box_on_page(text);
      for (const Layer& layer : drawing.layers)
        for (const DrawnShape& shape : layer.shapes) {
          const auto* drawn = std::get_if<Polyline>(&shape.form);
          if (!drawn || layer.name != "dimensions" || drawn->line != LineKind::normal) continue;
          REQUIRE(drawn->points.size() == 2);
          for (int k = 1; k < 20; ++k) {
            const Vec2 on = drawn->points[0] + k / 20.0 * (drawn->points[1] - drawn->points[0]);
            CHECK_FALSE(overlap(box, PageBox{on - Vec2{0.1, 0.1}, on + Vec2{0.1, 0.1}}));
          }
        }
    }
}

TEST_CASE("where to measure: each number stands on its sketch, no two words overlap") {
  const Canvas canvas = GENERATE(kPaper, kPhone);
  const std::vector<std::vector<std::string>> wanted = {{"1", "2"}, {"3", "4"}, {"5"}};
  const std::vector<Drawing> all = sketches(canvas);
  for (std::size_t d = 0; d < all.size(); ++d) {
    INFO(all[d].title);
    const std::vector<Text> texts = texts_of(all[d]);
    for (const std::string& number : wanted[d])
      CHECK(std::any_of(texts.begin(), texts.end(),
                        [&](const Text& t) { return t.words == number; }));
    for (std::size_t i = 0; i < texts.size(); ++i)
      for (std::size_t j = i + 1; j < texts.size(); ++j) {
        INFO(texts[i].words << " and " << texts[j].words);
        CHECK_FALSE(overlap(box_on_page(texts[i]), box_on_page(texts[j])));
      }
  }
}
