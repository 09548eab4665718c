// Ladders as they will stand, the covering pressed.
#include <catch2/catch.hpp>
#include <random>

#include "limit_rows.h"

namespace nook::test {
namespace {

constexpr double kIn = kMillimetresPerInch;

// Deck top 55, rung tops 11, 22, 33, 44 above the unpressed carpet, which gives `squash`.
Loft on_carpet(double squash) {
  Loft loft = with_ladder(55, {11, 22, 33, 44});
  loft.design.feet.push_back({"near rail", 800, {}});
  loft.survey.floor.covering = Covering{"carpet", inches(0.625), {}};
  loft.survey.floor.squash.push_back({800, {inches(3), inches(1.25)}, inches(squash), {}});
  return loft;
}

}  // namespace

TEST_CASE("ladder: carpet that gives 3/8 makes the last rise 11 3/8, over the 1/4 allowed") {
  const auto uneven = find(on_carpet(0.375).answer(), "rungs-uneven");
  REQUIRE(uneven);
  CHECK(uneven->severity == Severity::caution);
  REQUIRE(uneven->value);
  CHECK_THAT(uneven->value->value / kIn, Catch::WithinAbs(0.375, 1e-9));
  CHECK(spoken(uneven->text, usual_rounding(Unit::inch)) ==
        "Rungs rise by 11\", 11\", 11\"; the deck is 11 3/8\" above the last: they differ by "
        "3/8\"; at "
        "most 1/4\". Lengthen the rails by 3/8\" below the first rung.");
  CHECK(severity_of(on_carpet(0.25).answer(), "rungs-uneven").empty());
  CHECK(severity_of(on_carpet(0.375).answer(), "press-carpet") == "note");
}

TEST_CASE("ladder: rails 3/8 longer below the first rung mend that") {
  Loft loft = on_carpet(0.375);
  for (Part& part : loft.design.parts)
    if (part.group == "ladder") part.place_in_room.at.z += 0.375 * kIn;
  CHECK(severity_of(loft.answer(), "rungs-uneven").empty());
}

TEST_CASE("ladder: a covering of which only the thickness is known cannot be told") {
  Loft loft = on_carpet(0.375);
  loft.survey.floor.squash.clear();
  const auto uneven = find(loft.answer(), "rungs-uneven");
  REQUIRE(uneven);
  CHECK_FALSE(uneven->decided);
  CHECK(uneven->value->sd > 0);
}

TEST_CASE(
    "ladder: nothing that holds it to a wall lets it slide; screws through the deck hold it") {
  Loft loft = with_ladder(44, {11, 22, 33});
  CHECK(severity_of(loft.answer(), "ladder-can-slide") == "caution");
  loft.screw("rung 1", "near rail");
  loft.screw("near rail", "deck");
  CHECK(severity_of(loft.answer(), "ladder-can-slide") == "caution");
  loft.screw("deck", "left wall");
  CHECK(severity_of(loft.answer(), "ladder-can-slide").empty());
}

TEST_CASE("ladder: rungs held by pocket screws alone are told") {
  Loft loft = with_ladder(44, {11, 22, 33});
  loft.screw("rung 1", "near rail");
  loft.design.fastenings.back().screw.kind = ScrewKind::pocket;
  CHECK(severity_of(loft.answer(), "pocket-screwed-rungs") == "caution");
  loft.screw("rung 1", "far rail");
  CHECK(severity_of(loft.answer(), "pocket-screwed-rungs").empty());
}

TEST_CASE("ladder: ledgers, cleats and guard rails are no rungs") {
  Loft loft = platform(42, 38);
  loft.board("ledger", 20, 3, {30, 0, 20}, "-x", "+z", 1.25);
  loft.board("other ledger", 20, 3, {30, 0, 10}, "-x", "+z", 1.25);
  for (double up : {50.0, 60.0, 70.0})
    loft.board("rail " + std::to_string(static_cast<int>(up)), 20, 1.25, {10, 37, up}, "+x", "+y",
               1.25);
  CHECK(severity_of(loft.answer(), "load-not-stated") == "note");
  for (const char* id : {"rung-grip", "rungs-uneven", "ladder-can-slide", "toe-room"})
    CHECK(severity_of(loft.answer(), id).empty());
}

}  // namespace nook::test
