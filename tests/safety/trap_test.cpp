// What traps as left after other pieces cross it: CPSC 325 B.2.5.1.
#include <catch2/catch.hpp>
#include <cmath>

#include "limit_rows.h"

namespace nook::test {
namespace {

// The platform with a porthole in its front panel, its middle `up` above the floor.
Loft with_porthole(double diameter, double up) {
  Loft loft = platform(42, 38);
  Loft::bore(loft.design.parts[1], "porthole", {18, up}, diameter);
  return loft;
}

// A top cut in waves: valleys `apart` from crest to crest and `deep`, as sines.
Loft waved(double apart, double deep) {
  Loft loft;
  loft.use(User::child, 6, 8, Purpose::play);
  Polygon outline{{0, 0}, {48, 0}};
  for (int k = 96; k >= 0; --k) {
    const double x = k / 2.0;
    outline.push_back({x, 60 + deep / 2 * std::cos(2 * M_PI * x / apart)});
  }
  loft.panel("sheet", outline, {60, 20, 0}, "+y", "+z");
  return loft;
}

}  // namespace

TEST_CASE("trap: a porthole that passes a head traps one where the deck crosses it") {
  CHECK_FALSE(find(with_porthole(9.25, 25).answer(), "head-trap"));
  const SafetyAnswer crossed = with_porthole(9.25, 40).answer();
  const auto trap = find(crossed, "head-trap");
  REQUIRE(trap);
  CHECK(trap->severity == Severity::danger);
  CHECK(trap->where == "porthole of front, as crossed by deck");
  CHECK(crossed.verdict == Verdict::does_not_fit);
  // From the hole's lower edge, 35 3/8 up, to the deck's underside, 41 1/4 up.
  REQUIRE(trap->value);
  CHECK_THAT(trap->value->value / kMillimetresPerInch, Catch::WithinAbs(5.875, 0.01));
}

TEST_CASE("trap: a porthole of 6 traps, one of 3 1/4 does not, one of 10 does not") {
  CHECK(severity_of(with_porthole(6, 25).answer(), "head-trap") == "danger");
  CHECK(severity_of(with_porthole(3.25, 25).answer(), "head-trap").empty());
  CHECK(severity_of(with_porthole(10, 25).answer(), "head-trap").empty());
}

TEST_CASE("trap: what a wall closes behind is none, what stands on the floor is none") {
  Loft flat = pierced(6, 6);
  flat.design.parts[0].place_in_room.at.x = 25;  // an inch off the right wall
  CHECK(severity_of(flat.answer(), "head-trap").empty());
  Loft gate;
  gate.use(User::child, 6, 8, Purpose::play);
  gate.panel("gate", {{0, 0}, {10, 0}, {10, 6}, {16, 6}, {16, 0}, {40, 0}, {40, 60}, {0, 60}},
             {60, 20, 0}, "+y", "+z");
  CHECK(severity_of(gate.answer(), "head-trap").empty());
}

TEST_CASE("trap: rungs 10 apart of 1 1/4 stock leave 8 3/4, which traps; 10 1/2 apart do not") {
  const auto trap = find(with_ladder(40, {10, 20, 30}).answer(), "head-trap");
  REQUIRE(trap);
  REQUIRE(trap->value);
  CHECK_THAT(trap->value->value / kMillimetresPerInch, Catch::WithinAbs(8.75, 0.001));
  CHECK(severity_of(with_ladder(42, {10.5, 21, 31.5}).answer(), "head-trap").empty());
}

TEST_CASE("trap: a gap of 5 between a panel and the wall traps above a deck") {
  Loft loft = platform(42, 38);
  loft.design.parts[1].place_in_room.at.y += 5 * kMillimetresPerInch;
  const SafetyAnswer answer = loft.answer();
  CHECK(severity_of(answer, "neck-trap") == "danger");
  CHECK(severity_of(answer, "guard-missing") == "danger");
}

TEST_CASE("trap: a wave-cut top traps a neck where its valleys are steep, else not") {
  CHECK(severity_of(waved(12, 3).answer(), "neck-trap").empty());
  const auto steep = find(waved(8, 12).answer(), "neck-trap");
  REQUIRE(steep);
  CHECK(steep->severity == Severity::danger);
}

TEST_CASE("trap: a slot that the floor ends is none, one that a rail closes above is none") {
  Loft loft;
  loft.use(User::child, 6, 8, Purpose::play);
  loft.board("post", 6, 60, {60, 20, 0}, "+y", "+z");
  loft.board("other post", 6, 60, {60, 29, 0}, "+y", "+z");
  CHECK(severity_of(loft.answer(), "neck-trap").empty());
  loft.board("sill", 15, 6, {60, 20, 20}, "+y", "+z");
  CHECK(severity_of(loft.answer(), "neck-trap") == "danger");
  loft.board("cap", 15, 6, {60, 20, 54}, "+y", "+z");
  CHECK(severity_of(loft.answer(), "neck-trap").empty());
}

TEST_CASE("trap: for adults openings are not looked for, and that is said") {
  Loft loft = pierced(6, 6);
  loft.design.use = {};
  loft.use(User::adult, 0, 0, Purpose::play);
  CHECK(severity_of(loft.answer(), "head-trap").empty());
  CHECK(severity_of(loft.answer(), "not-checked") == "note");
}

TEST_CASE("trap: in storage, and where nothing says who uses it, it is a caution") {
  Loft loft = pierced(6, 6);
  CHECK(severity_of(loft.use(User::child, 6, 8, Purpose::storage).answer(), "head-trap") ==
        "caution");
  loft.design.use = {};
  CHECK(severity_of(loft.answer(), "head-trap") == "caution");
}

TEST_CASE("trap: a gap that gets caulked is no finger gap, one that stays is") {
  Loft loft;
  loft.use(User::child, 6, 8, Purpose::play);
  loft.board("panel", 30, 60, {60, 0.375, 0}, "+y", "+z");
  CHECK(severity_of(loft.answer(), "finger-gap") == "caution");
  Contact contact;
  contact.part = "panel", contact.meets = "left wall", contact.by = Fitting::caulk;
  loft.design.contacts.push_back(contact);
  CHECK(severity_of(loft.answer(), "finger-gap").empty());
}

TEST_CASE("traps: a groove less deep than wide with a wall behind it holds no limb") {
  const auto held = [](double off_wall) {
    Loft loft;
    loft.use(User::child, 6, 8, Purpose::play);
    loft.board("cleat", 20, 3, {30, off_wall, 40}, "-x", "+z");
    loft.board("other cleat", 20, 3, {51.25, off_wall, 40}, "-x", "+z");  // 1 1/4 beside it
    for (const Caution& caution : all(loft.answer(), "limb-gap"))
      if (caution.where == "between cleat and other cleat") return true;
    return false;
  };
  CHECK_FALSE(held(0));     // 3/4 deep
  CHECK_FALSE(held(0.45));  // 1.2 deep
  CHECK(held(0.55));        // 1.3 deep
  CHECK(held(8));           // open behind
}

}  // namespace nook::test
