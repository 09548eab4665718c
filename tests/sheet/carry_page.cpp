// The page and the JSON of the way in.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "sheet/carry_json.h"
#include "sheet/carry_text.h"

using namespace nook;

namespace {

Pass pass(Pass::Kind kind, const std::string& name, Verdict verdict, Grip hold) {
  Pass made;
  made.kind = kind;
  made.name = name;
  made.verdict = verdict;
  made.hold = hold;
  return made;
}

CarryAnswer sample_way() {
  Pass door = pass(Pass::Kind::doorway, "bedroom door", Verdict::does_not_fit, Grip::on_edge);
  door.spare = Measured{inches(-0.625).mm, 0.6};
  door.leaf_off = Measured{inches(0.75).mm, 0.6};
  Pass hall = pass(Pass::Kind::turn, "hall", Verdict::fits, Grip::tipped);
  hall.raised_mm = inches(94).mm;
  hall.spare = Measured{inches(30.0625).mm, 1};
  const Pass ceiling = pass(Pass::Kind::ceiling, "ceiling", Verdict::cannot_tell, Grip::tipped_up);
  Pass alcove = pass(Pass::Kind::alcove, "alcove", Verdict::fits, Grip::lowered_in);
  alcove.raised_mm = inches(8.875).mm;
  alcove.spare = Measured{0.5, 0.1};
  alcove.slides = Measured{inches(-0.5).mm, 0.8};
  alcove.widest = Measured{inches(46.75).mm, 0.8};
  CarryAnswer way;
  way.verdict = Verdict::does_not_fit;
  way.pieces = {{"cabinet", "cabinet", Verdict::does_not_fit, {door, hall}},
                {"panel", "panel", Verdict::cannot_tell, {hall, ceiling}},
                {"rung 1", "rung", Verdict::fits, {hall}},
                {"rung 2", "rung", Verdict::fits, {hall}},
                {"seat", "seat", Verdict::fits, {alcove}}};
  way.groups = {
      {"ladder", Verdict::does_not_fit, {door, hall}, {"ladder rail", "rung 1", "rung 2"}}};
  return way;
}

}  // namespace

TEST_CASE("carry page: what stops a piece first, then how the others are held") {
  CHECK(carry_text(sample_way(), Style{}) ==
        R"(The way in: DOES NOT FIT

does not fit  cabinet through bedroom door: 5/8" too large at best on edge, give
              or take 1/16"
              -> take the door off its hinges: then 3/4" to spare
cannot tell   panel up under the ceiling: the height of the ceiling is not known
              -> measure it: from the level line up to the ceiling, near its
                 place
fits          rung: round hall tipped to 94", 30 1/16" to spare
fits          seat: into the alcove with one end raised 8 7/8", lowered behind
              the narrow place
              -> cannot slide straight in: the alcove is 1/2" narrower in front,
                 give or take 1/16"; what slides in is 46 3/4" wide at most,
                 give or take 1/16"

Joined before they are carried:
  ladder does not go in whole (through bedroom door: 5/8" too large at best on
  edge, give or take 1/16"): carry it in pieces and join them in the room, in
  this order: ladder rail, rung 1, rung 2

Doors are taken with the leaf on. Room to swing in front of a door and behind it
is not looked at unless it is written down as a turn.
)");
}

TEST_CASE("carry page: copies that pass otherwise than the others are named") {
  const Pass flat = pass(Pass::Kind::doorway, "door", Verdict::fits, Grip::flat);
  const Pass askew = pass(Pass::Kind::doorway, "door", Verdict::fits, Grip::tilted);
  const Pass stuck = pass(Pass::Kind::doorway, "door", Verdict::does_not_fit, Grip::flat);
  CarryAnswer way = sample_way();
  way.groups.clear();
  way.pieces = {{"shelf 1", "shelf", Verdict::fits, {flat}},
                {"shelf 2", "shelf", Verdict::fits, {askew}},
                {"shelf 3", "shelf", Verdict::does_not_fit, {stuck}},
                {"shelf 4", "shelf", Verdict::fits, {flat}},
                {"shelf 5", "shelf", Verdict::does_not_fit, {stuck}}};
  for (PieceCarry& piece : way.pieces) piece.passes[0].spare = Measured{10, 1};
  const std::string text = carry_text(way, Style{});
  for (const char* name : {"shelf 1 and 4: ", "shelf 2: ", "shelf 3 and 5 through door: "})
    CHECK_THAT(text, Catch::Contains(name));
}

TEST_CASE("carry page: nothing measured - says what to measure") {
  CarryAnswer way;
  way.way_known = false;
  way.verdict = Verdict::cannot_tell;
  const std::string page = carry_text(way, Style{});
  CHECK(page.find("The way in: CANNOT TELL") == 0);
  CHECK(page.find("[access]") != std::string::npos);
}

TEST_CASE("carry JSON: holds what the page is made from, not rounded") {
  const Json json = carry_json(sample_way(), "job");
  CHECK(json["answer"] == "carry");
  CHECK(json["verdict"] == "does not fit");
  CHECK(json["pieces"].size() == 5);
  const Json& hall = json["pieces"][0]["passes"][1];
  CHECK(hall["name"] == "hall");
  CHECK(hall["verdict"] == "fits");
  CHECK(hall["spare_mm"] == inches(30.0625).mm);
  CHECK(hall["how"] == "tipped to 94\"");
  CHECK(json["pieces"][1]["passes"][1]["spare_mm"].is_null());
  CHECK(json["groups"][0]["order"][2] == "rung 2");
}
