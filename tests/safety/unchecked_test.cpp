// What was left out is said with its reason; what lies loose is told.
#include <catch2/catch.hpp>

#include "limit_rows.h"

namespace nook::test {
namespace {

bool says(const Loft& loft, const std::string& id, const std::string& words) {
  for (const Caution& caution : all(loft.answer(), id))
    if (spoken(caution.text, usual_rounding(Unit::inch)).find(words) != std::string::npos)
      return true;
  return false;
}

Obstacle obstacle(ObstacleKind kind) {
  Obstacle o;
  o.kind = kind, o.name = "it";
  o.along[0] = inches(100), o.along[1] = inches(104);
  o.height[0].value = inches(20), o.height[1].value = inches(24);
  return o;
}

// A box with its lid: four sides screwed to a wall and to each other, the lid laid on top.
Loft chest() {
  Loft loft;
  loft.use(User::anyone, 4, 8, Purpose::seat);
  loft.board("back", 40, 18, {40, 0, 0}, "-x", "+z");
  loft.board("front", 40, 18, {0, 18.75, 0}, "+x", "+z");
  loft.board("near end", 18, 18, {0, 0.75, 0}, "+y", "+z");
  loft.board("far end", 18, 18, {39.25, 0.75, 0}, "+y", "+z");
  loft.board("top", 40, 20, {0, 0, 18}, "+x", "+y");
  loft.screw("back", "left wall");
  for (const char* end : {"near end", "far end"}) loft.screw(end, "back"), loft.screw(end, "front");
  return loft;
}

}  // namespace

TEST_CASE("unchecked: no window or heater on record is said, one on record is looked at") {
  Loft loft = platform(42, 38);
  CHECK(says(loft, "not-checked", "No window, heater or alarm is on record"));
  loft.survey.walls[0].obstacles.push_back(obstacle(ObstacleKind::outlet));
  CHECK(says(loft, "not-checked", "No window, heater or alarm is on record"));
  loft.survey.walls[0].obstacles.push_back(obstacle(ObstacleKind::casing));
  CHECK_FALSE(says(loft, "not-checked", "No window, heater or alarm is on record"));
}

TEST_CASE("unchecked: head room without a ceiling is said, with one it is measured") {
  Loft loft = platform(42, 38);
  CHECK(says(loft, "not-checked", "nothing says how high the ceiling is"));
  CHECK(severity_of(loft.answer(), "head-room").empty());
  loft.room.ceiling = LevelSurface{};
  loft.room.ceiling->offset = inches(96).mm;
  CHECK_FALSE(says(loft, "not-checked", "nothing says how high the ceiling is"));
  CHECK(severity_of(loft.answer(), "head-room") == "note");
}

TEST_CASE("unchecked: the wedge block of high beds is said not to be tried") {
  CHECK(says(bed(50, 7), "not-checked", "wedge block"));
  CHECK_FALSE(says(platform(42, 38), "not-checked", "wedge block"));
}

TEST_CASE("unchecked: what a hand finds better is left to the hand, where children are") {
  Loft loft = platform(42, 38);
  CHECK(says(loft, "not-checked", "splinters"));
  loft.design.use.by = User::adult;
  CHECK_FALSE(says(loft, "not-checked", "splinters"));
}

TEST_CASE("loose lid: told until it is screwed down, never to adults alone") {
  Loft loft = chest();
  CHECK(severity_of(loft.answer(), "loose-lid") == "caution");
  CHECK(find(loft.answer(), "loose-lid")->where == "top");
  loft.design.use.by = User::adult;
  CHECK(severity_of(loft.answer(), "loose-lid").empty());
  Loft fixed = chest();
  fixed.screw("top", "front");
  CHECK(severity_of(fixed.answer(), "loose-lid").empty());
}

}  // namespace nook::test
