// By how much the findings of a fit are missed, on findings made up by hand.
#include "adapt/flaw.h"

#include <catch2/catch.hpp>

using namespace nook;

namespace {

// An edge that butts against a wall, 1/8 in accepted, with such gaps in the adjusted room.
Flaw butted(double least_mm, double most_mm) {
  static const Contact how;
  FitAnswer fit;
  ContactFit contact;
  contact.how = &how;
  contact.part = "deck", contact.edge = "left", contact.meets = "right wall";
  contact.gap = {least_mm, most_mm};
  contact.allow = kMillimetresPerInch / 8;
  contact.verdict = Verdict::does_not_fit;
  contact.chance = 0;
  fit.contacts.push_back(contact);
  return findings_of(fit, usual_rounding(Unit::mm)).at(0);
}

}  // namespace

TEST_CASE("flaw: an edge is missed by its overlap or by what is too wide, whichever is more") {
  CHECK(butted(0, 5.175).over_mm == Approx(2));
  CHECK(butted(-1, 1).over_mm == Approx(1));
  CHECK(butted(-1, 8.175).over_mm == Approx(5));  // jams at one end, gapes at the other
  CHECK(butted(-6, 8.175).over_mm == Approx(6));
  CHECK(butted(0, 3).over_mm == 0);
  CHECK(butted(0, 3).spare_mm == Approx(0.175));
  CHECK(butted(-0.05, 3).over_mm == 0);  // touching
}

TEST_CASE("flaw: what is missed more, or is less likely, is a worse one") {
  Flaw before = butted(0, 5.175), after = butted(0, 5.4);
  CHECK(worsened({before}, {after}) == nullptr);  // on the verge: less than 1/64 in
  after = butted(0, 5.7);
  const std::vector<Flaw> worse{after};
  CHECK(worsened({before}, worse) == &worse[0]);
  before.verdict = Verdict::cannot_tell, before.chance = 0.5;
  after = butted(0, 5.175);
  const std::vector<Flaw> surer{after};
  CHECK(worsened({before}, surer) == &surer[0]);
  CHECK(worsened({}, surer) == &surer[0]);
}

TEST_CASE("flaw: rank counts what misses by more than a margin first") {
  CHECK(rank_of({butted(0, 5.175)}) == Rank{1, 1, 1});
  CHECK(rank_of({butted(0, 3.3)}) == Rank{0, 1, 1});
  Flaw open = butted(0, 5.175);
  open.verdict = Verdict::cannot_tell;
  CHECK(rank_of({open, butted(0, 9)}) == Rank{1, 1, 2});
  CHECK(rank_of({open}) < rank_of({butted(0, 3.3)}));
}
