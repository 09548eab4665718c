// Cases worked out by hand with ordinary geometry; inches in the words, millimeters in the code.
#include <catch2/catch.hpp>

#include "fit/rooms_by_hand.h"
#include "solid/polygon.h"

using namespace nook;
using namespace nook::by_hand;
using Catch::WithinAbs;

namespace {

// A level deck, 46 along the left wall and 36 along the right one, tight to the left wall.
Design deck_design(Fitting by) {
  Design d = empty_design();
  d.parts.push_back(panel("deck", {46 * in, 36 * in}, {0, 0, 40 * in}, kX, kY));
  d.contacts.push_back(meet("deck", EdgeSide::bottom, "left wall"));
  d.contacts.push_back(meet("deck", EdgeSide::left, "right wall", by));
  d.groups.push_back(tight("deck", {"left wall"}));
  return d;
}

// A panel standing square to the left wall, its left edge against it.
Design upright_design(double height) {
  Design d = empty_design();
  d.parts.push_back(panel("panel", {30 * in, height}, {47 * in, 0, 0}, kY, kZ));
  Contact c = meet("panel", EdgeSide::left, "left wall", Fitting::scribe);
  c.notch = true;
  d.contacts.push_back(c);
  return d;
}

double width(const Polygon& p) {
  const Box2 box = box_of(p);
  return box.high.x - box.low.x;
}
double height(const Polygon& p) {
  const Box2 box = box_of(p);
  return box.high.y - box.low.y;
}

}  // namespace

TEST_CASE("deck: a corner open by 1.4 degrees leaves 7/8 in front and no wood for it",
          "[reference]") {
  const FitAnswer f = fit_exactly(corner(91.4), deck_design(Fitting::taper));
  const double wedge = 36 * in * std::tan(1.4 * std::acos(-1.0) / 180);
  REQUIRE(f.contacts.size() == 2);
  CHECK_THAT(f.groups[0].turn_deg, WithinAbs(0, 1e-6));
  CHECK_THAT(f.contacts[0].gap.most, WithinAbs(0, 1e-3));
  CHECK_THAT(f.contacts[1].gap.least, WithinAbs(0, 1e-3));
  CHECK_THAT(f.contacts[1].gap.most, WithinAbs(wedge, 1e-3));
  CHECK_THAT(f.contacts[1].line.front().at, WithinAbs(0, 1e-9));
  CHECK_THAT(f.contacts[1].line.front().gap, WithinAbs(0, 1e-3));
  CHECK_THAT(f.contacts[1].taper_deg, WithinAbs(1.4, 1e-4));
  CHECK_THAT(f.contacts[1].wood_mm, WithinAbs(0, 1e-3));
  CHECK(f.contacts[1].verdict == Verdict::does_not_fit);
}

TEST_CASE("deck: a corner closed by 1.4 degrees leaves 7/8 at the corner and the wood is there",
          "[reference]") {
  const FitAnswer f = fit_exactly(corner(88.6), deck_design(Fitting::taper));
  const double wedge = 36 * in * std::tan(1.4 * std::acos(-1.0) / 180);
  CHECK_THAT(f.contacts[0].gap.most, WithinAbs(0, 1e-3));
  CHECK_THAT(f.contacts[1].gap.least, WithinAbs(0, 1e-3));
  CHECK_THAT(f.contacts[1].line.front().gap, WithinAbs(wedge, 1e-3));
  CHECK_THAT(f.contacts[1].line.back().gap, WithinAbs(0, 1e-3));
  CHECK_THAT(f.contacts[1].wood_mm, WithinAbs(wedge, 1e-3));
  CHECK_THAT(f.contacts[1].after.most, WithinAbs(0, 1e-3));
  CHECK(f.contacts[1].verdict == Verdict::fits);
}

TEST_CASE("panel: a wall leaning away touches at the notch's top and opens 1/4 at the top",
          "[reference]") {
  Found c = corner(90, -0.375 / 96);
  add_board(c.survey.walls[0], 5.25 * in, 9.0 / 16 * in);
  const FitAnswer f = fit_exactly(c, upright_design(70 * in));
  REQUIRE(f.contacts.size() == 1);
  REQUIRE(f.notches.size() == 1);
  CHECK_THAT(f.contacts[0].touches_at, WithinAbs(5.375 * in, 2e-3));
  CHECK_THAT(f.contacts[0].gap.most, WithinAbs(64.625 * 0.375 / 96 * in, 1e-3));
  CHECK_THAT(height(f.notches[0].polygon), WithinAbs(5.375 * in, 2e-3));
  CHECK_THAT(width(f.notches[0].polygon),
             WithinAbs((9.0 / 16 + 5.375 * 0.375 / 96 + 0.125) * in, 2e-3));
}

TEST_CASE("panel: a wall leaning in touches at the top and the board needs only .31",
          "[reference]") {
  Found c = corner(90, 0.375 / 96);
  add_board(c.survey.walls[0], 5.25 * in, 9.0 / 16 * in);
  const FitAnswer f = fit_exactly(c, upright_design(70 * in));
  REQUIRE(f.notches.size() == 1);
  CHECK_THAT(f.contacts[0].touches_at, WithinAbs(70 * in, 1e-6));
  CHECK_THAT(f.contacts[0].gap.most, WithinAbs(64.625 * 0.375 / 96 * in, 1e-3));
  // At the board's top, 5 1/4, the wall is 64 3/4 x .375 / 96 back.
  CHECK_THAT(width(f.notches[0].polygon),
             WithinAbs((9.0 / 16 - 64.75 * 0.375 / 96 + 0.125) * in, 2e-3));
}

TEST_CASE("panel: an exact corner has gaps of nothing and a notch of board and clearance",
          "[reference]") {
  Found c = corner(90);
  add_board(c.survey.walls[0], 5.25 * in, 9.0 / 16 * in);
  const FitAnswer f = fit_exactly(c, upright_design(70 * in));
  REQUIRE(f.notches.size() == 1);
  CHECK_THAT(f.contacts[0].gap.least, WithinAbs(0, 1e-6));
  CHECK_THAT(f.contacts[0].gap.most, WithinAbs(0, 1e-6));
  CHECK_THAT(width(f.notches[0].polygon), WithinAbs((9.0 / 16 + 0.125) * in, 1e-3));
  CHECK_THAT(height(f.notches[0].polygon), WithinAbs((5.25 + 0.125) * in, 1e-3));
  CHECK(f.clashes.empty());
  CHECK(f.verdict == Verdict::fits);
}
