// Windows to get out by, alarms, cables and pipes: told where they are in the way, else not.
#include <catch2/catch.hpp>
#include <set>

#include "fasten/drill.h"
#include "loft.h"

namespace nook::test {
namespace {

// On the left wall, inches from the corner and above the floor.
Loft with(Loft loft, ObstacleKind kind, Vec2 along, Vec2 height) {
  Obstacle o;
  o.kind = kind, o.name = "thing";
  o.along[0] = inches(along.x), o.along[1] = inches(along.y);
  o.height[0].value = inches(height.x), o.height[1].value = inches(height.y);
  loft.survey.walls[0].obstacles.push_back(o);
  return loft;
}

std::set<std::string> places(const Loft& loft, const std::string& id, Severity severity) {
  std::set<std::string> found;
  for (const Caution& caution : all(loft.answer(), id))
    if (caution.severity == severity) found.insert(caution.where);
  return found;
}

std::string said(const Loft& loft, const std::string& id) {
  const auto caution = find(loft.answer(), id);
  return caution ? spoken(caution->text, usual_rounding(Unit::inch)) : "";
}

// A panel 30 high that stands square to the left wall, from `near` to `near` + 35 in off it,
// drawn from its far end to its near one or the other way round.
Loft crosswise(double near, bool towards_wall) {
  Loft loft;
  loft.use(User::child, 8, 12, Purpose::sleep, 6);
  if (towards_wall)
    loft.board("screen", 35, 30, {40, near + 35, 20}, "-y", "+z");
  else
    loft.board("screen", 35, 30, {40, near, 20}, "+y", "+z");
  return with(loft, ObstacleKind::casing, {30, 60}, {24, 80});
}

Loft ledger() {
  Loft loft;
  loft.use(User::adult, 0, 0, Purpose::desk);
  loft.board("ledger", 40, 3, {50, 0, 40}, "-x", "+z", 1.25);  // along 10 to 50, 40 to 43 high
  loft.screw("ledger", "left wall");
  return loft;
}

}  // namespace

TEST_CASE("escape window: what stands before it is told, what stands beside it is not") {
  const Loft behind = with(bed(50, 7), ObstacleKind::casing, {20, 60}, {30, 80});
  const auto told = places(behind, "escape-window", Severity::caution);
  CHECK(told.count("bed") == 1);
  CHECK(told.count("wall rail") == 1);
  CHECK(told.count("head") == 0);  // it ends at the corner
  const Loft beside = with(bed(50, 7), ObstacleKind::casing, {81, 110}, {30, 80});
  CHECK(places(beside, "escape-window", Severity::caution).empty());
  const Loft above = with(bed(50, 7), ObstacleKind::casing, {20, 60}, {64, 80});
  CHECK(places(above, "escape-window", Severity::caution).empty());
  CHECK(places(above, "escape-window", Severity::note).count("the room") == 1);
}

TEST_CASE("escape window: a piece within 36 in of it is told, whichever end it is drawn from") {
  for (const bool towards_wall : {false, true}) {
    CHECK(places(crosswise(2, towards_wall), "escape-window", Severity::caution).size() == 1);
    CHECK(places(crosswise(35.9, towards_wall), "escape-window", Severity::caution).size() == 1);
    CHECK(places(crosswise(36.1, towards_wall), "escape-window", Severity::caution).empty());
  }
}

TEST_CASE("alarm: one within 36 in of a deck is told with its distance") {
  // The deck reaches 46 along the left wall.
  const auto alarm = [](double from) {
    return said(with(platform(42, 38), ObstacleKind::alarm, {from, from + 4}, {80, 84}),
                "alarm-near");
  };
  CHECK(alarm(60) ==
        "The thing on the left wall is 14\" away: it must stay in free air and out of play.");
  CHECK_FALSE(alarm(81.9).empty());
  CHECK(alarm(82.1).empty());
}

TEST_CASE("cables: a ledger straight over a box, or level with it, is told") {
  const auto outlet = [](Vec2 along, Vec2 height, ObstacleKind kind = ObstacleKind::outlet) {
    return said(with(ledger(), kind, along, height), "cable-run");
  };
  CHECK(outlet({30, 33}, {12, 16}).find("screwed over or under the thing") != std::string::npos);
  CHECK(outlet({30, 33}, {60, 64}).find("screwed over or under the thing") != std::string::npos);
  CHECK(outlet({70, 73}, {41, 45}).find("screwed level with the thing") != std::string::npos);
  CHECK(outlet({70, 73}, {12, 16}).empty());
  CHECK(outlet({51, 54}, {44, 48}).empty());
  CHECK(outlet({30, 33}, {48, 52}, ObstacleKind::thermostat).size() > 0);
  CHECK(outlet({30, 33}, {12, 16}, ObstacleKind::vent).empty());
}

TEST_CASE("cables: every kind of box counts as one, and as one on record") {
  const auto ids = [](ObstacleKind kind) {
    const SafetyAnswer answer = with(ledger(), kind, {20, 24}, {70, 74}).answer();
    return std::pair{find(answer, "cable-run").has_value(),
                     find(answer, "boxes-not-recorded").has_value()};
  };
  for (const ObstacleKind box : {ObstacleKind::outlet, ObstacleKind::switch_box,
                                 ObstacleKind::thermostat, ObstacleKind::alarm})
    CHECK(ids(box) == std::pair{true, false});
  CHECK(ids(ObstacleKind::vent) == std::pair{false, true});
}

TEST_CASE("pipes: one behind a ledger is told, one beside or below it is not") {
  const auto pipe = [](Vec2 along, Vec2 height) {
    return said(with(ledger(), ObstacleKind::pipe, along, height), "pipe-behind");
  };
  CHECK(pipe({30, 31}, {0, 96}) == "The thing runs behind it.");
  CHECK(pipe({52, 53}, {0, 96}).empty());
  CHECK(pipe({30, 31}, {0, 39}).empty());
}

TEST_CASE("cables: near the ceiling as near a corner") {
  // BS 7671 522.6.202: 150 mm. The ledger's top is 43 in above the floor.
  const auto under = [](double room_mm) {
    Loft loft = ledger();
    loft.room.ceiling = LevelSurface{};
    loft.room.ceiling->offset = 43 * kMillimetresPerInch + room_mm;
    return all(loft.answer(), "corner-cables").size();
  };
  CHECK(under(149) == 1);
  CHECK(under(151) == 0);
}

TEST_CASE("cables: screws reach as deep as they are laid out, and none where no hole is") {
  Loft loft = ledger();
  loft.design.fastenings[0].screw.length = inches(4);
  const auto pieces = pieces_of(loft.design);
  const std::vector<Frame> frames{pieces[0].frame};
  DrillAnswer drill;
  drill.walls.resize(2);
  const auto told = [&] {
    return find(
        safety(
            {loft.survey, loft.design, loft.room, {}, pieces, frames, nullptr, true, .95, &drill}),
        "screw-reaches-cable");
  };
  CHECK_FALSE(told());
  Hole hole;
  hole.part = "ledger";
  for (const double deep : {40.0, 50.0, 45.0}) {
    hole.embedment_mm = deep;
    drill.walls[0].holes.push_back(hole);
  }
  REQUIRE(told());
  CHECK(told()->value->value == 50);
}

TEST_CASE("heated floor: told as a caution where a thing stands on it, as a note else") {
  Loft loft = ledger();
  CHECK(severity_of(loft.answer(), "heated-floor").empty());
  loft.survey.floor.heated = true;
  CHECK(severity_of(loft.answer(), "heated-floor") == "note");
  loft.design.feet.push_back({"ledger", {}, {}});
  CHECK(severity_of(loft.answer(), "heated-floor") == "caution");
}

}  // namespace nook::test
