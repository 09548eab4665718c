// Rules of the fit, each by a small design with a known answer.
#include <catch2/catch.hpp>

#include <array>

#include "fit/rooms_by_hand.h"

using namespace nook;
using namespace nook::by_hand;
using Catch::WithinAbs;

namespace {

double rad(double deg) {
  return deg * std::acos(-1.0) / 180;
}

FitAnswer fit_in(const Found& c, const Design& d, const std::vector<RoomShape>& draws) {
  return fit({c.survey, d, c.room, draws, 0.95, true});
}

// A panel 1000 tall square to the left wall and one square to the right one: each opens by 1000
// times its wall's lean.
Design two_panels() {
  Design d = empty_design(18);
  d.parts.push_back(panel("a", {300, 1000}, {1000, 0, 0}, kY, kZ));
  d.parts.push_back(panel("b", {300, 1000}, {0, 1000, 0}, kX, kZ));
  d.contacts.push_back(meet("a", EdgeSide::left, "left wall"));
  d.contacts.push_back(meet("b", EdgeSide::left, "right wall"));
  return d;
}

Group standing_still(const std::string& name) {
  Group g;
  g.name = name;
  g.turn = false;
  return g;
}

}  // namespace

TEST_CASE("chance: a job's is the share of draws in which every finding holds", "[reference]") {
  // 1/8 in is accepted: a lean of 4 in 1000 opens too far. Of ten draws a fails in two and b in
  // two, one of them the same: a .8, b .8, the job .7; not their product, .64, nor the lesser, .8.
  const Found c = corner(90);
  std::vector<RoomShape> draws(10, c.room);
  draws[1].walls[0].lean = draws[2].walls[0].lean = -0.004;
  draws[2].walls[1].lean = draws[3].walls[1].lean = -0.004;
  const FitAnswer f = fit_in(c, two_panels(), draws);
  CHECK_THAT(f.contacts[0].chance, WithinAbs(0.8, 1e-9));
  CHECK_THAT(f.contacts[1].chance, WithinAbs(0.8, 1e-9));
  CHECK_THAT(f.chance, WithinAbs(0.7, 1e-9));
  CHECK(f.verdict == Verdict::cannot_tell);
}

TEST_CASE("chance: fits from sure on, does not fit up to 1 - sure, one-sided", "[reference]") {
  const Found c = corner(90);
  for (const auto& [bad, wanted] :
       {std::pair{1, Verdict::fits}, std::pair{2, Verdict::cannot_tell},
        std::pair{18, Verdict::cannot_tell}, std::pair{19, Verdict::does_not_fit}}) {
    INFO(bad << " of 20 draws are open too far");
    std::vector<RoomShape> draws(20, c.room);
    for (int i = 0; i < bad; ++i) draws[i].walls[0].lean = -0.004;
    CHECK(fit_in(c, two_panels(), draws).contacts[0].verdict == wanted);
  }
}

TEST_CASE("notch: as deep as the obstacle in all but 1 - sure of the draws", "[reference]") {
  // The wall leans in by i / 20 of .01: at the top, 1000 up, the panel is pushed out by up to 10,
  // and the board's top at 100 comes less over its edge by 900 times the lean.
  Found c = corner(90);
  add_board(c.survey.walls[0], 100, 20);
  Design d = two_panels();
  d.contacts[0].notch = true;
  d.contacts[0].by = Fitting::scribe;
  std::vector<RoomShape> draws(20, c.room);
  for (int i = 0; i < 20; ++i) draws[i].walls[0].lean = 0.01 * i / 20;
  // Reaches are 20 - 900 lean, 20 - .45 i: the 19th of 20 is that of i = 1.
  const FitAnswer f = fit_in(c, d, draws);
  REQUIRE(f.notches.size() == 1);
  CHECK_THAT(f.notches[0].depth_mm, WithinAbs(20 - 0.45 + in / 8, 0.02));
}

TEST_CASE("groups: a contact with a part of its own group has no spread", "[reference]") {
  const Found c = corner(90);
  Design d = empty_design(30);
  d.parts.push_back(panel("rail", {60, 1500}, {700, 0, 0}, kY, kZ));
  d.parts.push_back(panel("rung", {400, 30}, {300, 20, 500}, kX, kY));
  d.parts[0].group = d.parts[1].group = "ladder";
  d.parts.push_back(panel("post", {100, 30}, {200, 20, 500}, kX, kY));
  d.contacts.push_back(meet("rung", EdgeSide::right, "rail"));
  d.contacts.push_back(meet("rail", EdgeSide::left, "left wall", Fitting::scribe));
  d.contacts.push_back(meet("post", EdgeSide::right, "rung", Fitting::clear));
  d.groups = {standing_still("ladder"), standing_still("post")};
  std::vector<RoomShape> draws(40, c.room);
  for (int i = 0; i < 40; ++i) {
    draws[i].walls[0].lean = 0.0002 * (i - 20);
    draws[i].walls[1].lean = 0.0001 * (i % 7);
  }
  const FitAnswer f = fit_in(c, d, draws);
  CHECK(f.contacts[0].gap_sd == 0);
  CHECK(f.contacts[0].chance == 1);
  CHECK(f.contacts[1].gap_sd > 0.1);
}

TEST_CASE("allow: what is usual for each way of fitting", "[reference]") {
  // Common practice, no source: 1/8 in, caulk 1/4, filler 1/16 beside it, shim 1/2, trim its width
  // less 1/4, at the floor 3/8; a gap that is wanted is added.
  const std::vector<std::pair<Fitting, double>> usual = {
      {Fitting::butt, 1.0 / 8},  {Fitting::taper, 1.0 / 8},   {Fitting::scribe, 1.0 / 8},
      {Fitting::caulk, 1.0 / 4}, {Fitting::filler, 1.0 / 16}, {Fitting::shim, 1.0 / 2}};
  for (const auto& [by, inches_accepted] : usual)
    for (double gap : {0.0, 2.0}) {
      Design d = two_panels();
      d.contacts[0].by = by;
      d.contacts[0].gap = {gap};
      CHECK_THAT(fit_exactly(corner(90), d).contacts[0].allow,
                 WithinAbs(gap + inches_accepted * in, 1e-9));
    }
  for (double width : {0.75, 1.5}) {
    Design d = two_panels();
    d.contacts[0].by = Fitting::trim;
    d.contacts[0].trim = inches(width);
    CHECK_THAT(fit_exactly(corner(90), d).contacts[0].allow, WithinAbs((width - 0.25) * in, 1e-9));
  }
  Design d = two_panels();
  d.contacts.push_back(meet("a", EdgeSide::bottom, "floor"));
  CHECK_THAT(fit_exactly(corner(90), d).contacts[2].allow, WithinAbs(3.0 / 8 * in, 1e-9));
}

TEST_CASE("filler: judged by what a straight strip leaves beside it", "[reference]") {
  // An edge that is hollow by `deep` in its middle: however wide the strip, a straight one leaves
  // it.
  for (double deep : {1.0, 2.0}) {
    INFO("hollow by " << deep);
    Design d = empty_design(18);
    d.parts.push_back(panel("deck", {600, 400}, {500, 0, 700}, kX, kY));
    d.parts[0].outline = {{0, 0}, {300, deep}, {600, 0}, {600, 400}, {0, 400}};
    d.contacts.push_back(meet("deck", EdgeRun{0, 1}, "left wall", Fitting::filler));
    const FitAnswer f = fit_exactly(corner(90), d);
    CHECK_THAT(f.contacts[0].after.most, WithinAbs(deep, 1e-3));
    CHECK((f.contacts[0].verdict == Verdict::fits) == (deep < in / 16));
  }
}

TEST_CASE("edge-cannot-meet: within 30 degrees of the wall's plane, beyond 300 mm", "[reference]") {
  for (double degrees : {29.0, 31.0}) {
    INFO("the panel stands at " << degrees << " degrees to the wall");
    Design d = empty_design(18);
    const Vec3 u{std::cos(rad(degrees)), std::sin(rad(degrees)), 0};
    d.parts.push_back(panel("panel", {400, 600}, {1000, 60, 100}, u, kZ));
    d.contacts.push_back(meet("panel", EdgeSide::left, "left wall", Fitting::clear));
    d.groups.push_back(standing_still("panel"));
    const FitAnswer f = fit_exactly(corner(90), d);
    CHECK(f.contacts[0].meets_anything == (degrees > 30));
    if (degrees > 30) {
      // The back's lower end is 60 out: along the panel 60 / sin, square to the wall 60 less what
      // the thickness brings nearer.
      CHECK_THAT(f.contacts[0].back[0].gap, WithinAbs(60 / std::sin(rad(degrees)), 1e-3));
      CHECK_THAT(f.contacts[0].square_mm, WithinAbs(60 - 18 * std::cos(rad(degrees)), 1e-3));
    }
  }
  for (double far : {299.0, 301.0}) {
    Design d = empty_design(18);
    d.parts.push_back(panel("panel", {400, 600}, {1000, far, 100}, kY, kZ));
    d.contacts.push_back(meet("panel", EdgeSide::left, "left wall", Fitting::clear));
    d.groups.push_back(standing_still("panel"));
    CHECK(fit_exactly(corner(90), d).contacts[0].meets_anything == (far < 300));
  }
}

TEST_CASE("clearance: sticks that cross are as near as at their crossing", "[reference]") {
  // Corners are half a metre from the crossing: a distance of corners would be over 400.
  Design d = empty_design(30);
  const Vec3 across{std::sin(rad(20)), std::cos(rad(20)), 0};
  const Vec3 square{std::cos(rad(20)), -std::sin(rad(20)), 0};
  d.parts.push_back(panel("lower", {1000, 30}, {500, 1000, 500}, kX, kY));
  d.parts.push_back(panel("upper", {30, 1000}, {830, 550, 538.9}, square, across));
  const FitAnswer f = fit_exactly(corner(90), d);
  REQUIRE(f.clearances.size() == 1);
  CHECK_THAT(f.clearances[0].least_mm, WithinAbs(8.9, 1e-6));
}
