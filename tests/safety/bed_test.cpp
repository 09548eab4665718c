// High beds: what their rails let through, and what is asked where [use] does not say it.
#include <catch2/catch.hpp>

#include "loft.h"

namespace nook::test {
namespace {

// The base at 50, the mattress 6 thick on 3/4 of board: its top is 56 3/4 up, 6 3/4 above the
// lower edge of the front rail, which is 13 3/4 high.
Loft with_hole(double up, double diameter) {
  Loft loft = bed(50, 7);
  Loft::bore(loft.design.parts[2], "hole", {40, up}, diameter);
  return loft;
}

}  // namespace

TEST_CASE("bed: a hole in a rail above the mattress passes nothing of 3.5 in", "[reference]") {
  // 16 CFR 1213.3, 1513: the wedge block is about 3.5 in wide (from memory).
  CHECK(severity_of(with_hole(10.2, 3.4).answer(), "guard-opening").empty());
  const auto caution = find(with_hole(10.2, 3.6).answer(), "guard-opening");
  REQUIRE(caution);
  CHECK(caution->where.find("bed") != std::string::npos);
}

TEST_CASE("bed: a hole that the mattress covers is no opening") {
  CHECK(severity_of(with_hole(4, 3.6).answer(), "guard-opening").empty());
}

TEST_CASE("bed: without ages nobody says that it may be slept in") {
  Loft loft = bed(50, 7);
  for (auto& age : loft.design.use.ages) age.reset();
  const auto caution = find(loft.answer(), "ages-not-stated");
  REQUIRE(caution);
  CHECK(spoken(caution->text, usual_rounding(Unit::inch)) ==
        "Nobody under 6 years sleeps this high. State `ages` in [use].");
  CHECK(loft.answer().verdict != Verdict::fits);
  CHECK_FALSE(find(bed(20, 7).answer(), "ages-not-stated"));
}

TEST_CASE("bed: without the mattress its rails count from the boards, and that is said") {
  Loft loft = bed(50, 7);
  loft.design.use.mattress.reset();
  bool said = false;
  for (const Caution& caution : all(loft.answer(), "not-checked"))
    said = said || spoken(caution.text, usual_rounding(Unit::inch)).find("state `mattress`") !=
                       std::string::npos;
  CHECK(said);
}

TEST_CASE("lifting: of a stock that states no weight it is said to weigh first") {
  Loft loft = platform(42, 38);
  CHECK(severity_of(loft.answer(), "weight-not-known").empty());
  for (Stock& stock : loft.design.stock) stock.density.reset();
  CHECK(find(loft.answer(), "weight-not-known"));
}

TEST_CASE("bed: the seam between two boards of its base wants no rail") {
  Loft loft = bed(50, 7);
  const Part base = loft.design.parts[0];
  REQUIRE(find(loft.answer(), "fall-height"));
  CHECK(all(loft.answer(), "bed-rail-missing").empty());
  const double half = base.outline[2].y / 2;
  Part front = base;
  front.name = front.group = "other half";
  loft.design.parts[0].outline = {
      {0, 0}, {base.outline[2].x, 0}, {base.outline[2].x, half}, {0, half}};
  front.outline = loft.design.parts[0].outline;
  front.place_in_room.at = front.place_in_room.at + half * front.place_in_room.v;
  loft.design.parts.push_back(front);
  CHECK(all(loft.answer(), "fall-height").size() == 1);
  CHECK(all(loft.answer(), "bed-rail-missing").empty());
}

}  // namespace nook::test
