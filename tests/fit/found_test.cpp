// Clearances, covers, ends that show, groups, obstacles, carpets: small designs with known answers.
#include <algorithm>
#include <catch2/catch.hpp>

#include "fit/rooms_by_hand.h"
#include "solid/polygon.h"

using namespace nook;
using namespace nook::by_hand;
using Catch::WithinAbs;

namespace {

// A front panel square to the left wall, and a side panel that butts its back, 400 in from its left
// edge; the front panel is `width` wide.
Design boxed(double width) {
  Design d = empty_design(18);
  d.parts.push_back(panel("front", {width, 900}, {800, 0, 100}, kY, kZ));
  d.parts.push_back(panel("side", {600, 900}, {800, 400, 100}, {-1, 0, 0}, kZ));
  d.parts[1].show = ShowFace::front;
  d.contacts.push_back(meet("side", EdgeSide::left, "front"));
  return d;
}

Covered covered(double margin) {
  Covered c;
  c.part = "side";
  c.edge = EdgeSide::left;
  c.edge_given = "left";
  c.behind = "front";
  c.margin = {margin};
  return c;
}

void add_outlet(Wall& wall, double along, double height, double size, double out) {
  Obstacle o;
  o.name = "outlet";
  o.along[0] = {along};
  o.along[1] = {along + size};
  o.height[0].value = {height};
  o.height[1].value = {height + size};
  o.out[0] = {0};
  o.out[1] = {out};
  wall.obstacles.push_back(o);
}

double width(const Polygon& p) {
  return box_of(p).high.x - box_of(p).low.x;
}
double height(const Polygon& p) {
  return box_of(p).high.y - box_of(p).low.y;
}

}  // namespace

TEST_CASE("covered: the margin is the width of the cover beside the edge", "[reference]") {
  // The side panel's left edge lies at y = 400 to 418.
  for (double beyond : {30.0, 5.0, -7.0}) {
    INFO("front panel ends " << beyond << " past the side panel");
    Design d = boxed(418 + beyond);
    d.covered.push_back(covered(12));
    const FitAnswer f = fit_exactly(corner(90), d);
    REQUIRE(f.covered.size() == 1);
    CHECK_THAT(f.covered[0].margin_mm, WithinAbs(beyond, 1e-3));
    CHECK((f.covered[0].verdict == Verdict::fits) == (beyond >= 12));
  }
}

TEST_CASE("covered: a cutout beside the edge narrows the cover", "[reference]") {
  Design d = boxed(600);
  Cutout hole;
  hole.outline = {{426, 300}, {500, 300}, {500, 400}, {426, 400}};
  d.parts[0].cutouts.push_back(hole);
  d.covered.push_back(covered(12));
  const FitAnswer f = fit_exactly(corner(90), d);
  CHECK_THAT(f.covered[0].margin_mm, WithinAbs(8, 1e-3));
  CHECK(f.covered[0].verdict == Verdict::does_not_fit);
}

TEST_CASE("shows: an end in a cutout is told, a hidden one is not", "[reference]") {
  Design d = boxed(600);
  Cutout hole;
  hole.name = "porthole";
  hole.outline = {{300, 300}, {408, 300}, {408, 400}, {300, 400}};
  d.parts[0].cutouts.push_back(hole);
  const FitAnswer shown = fit_exactly(corner(90), d);
  REQUIRE(shown.shows.size() == 1);
  CHECK(shown.shows[0].part == "side");
  CHECK(shown.shows[0].where == "porthole of front");
  CHECK_THAT(shown.shows[0].by_mm, WithinAbs(8, 1e-3));  // 400 to 408
  d.parts[0].cutouts[0].outline = {{200, 300}, {398, 300}, {398, 400}, {200, 400}};
  CHECK(fit_exactly(corner(90), d).shows.empty());
}

TEST_CASE("groups: pieces of one group move together, their joints keep their gap", "[reference]") {
  Design d = empty_design(30);
  d.parts.push_back(panel("rail", {60, 1500}, {700, 300, 0}, kY, kZ));
  d.parts.push_back(panel("rung", {400, 30}, {300, 320, 500}, kX, kY));
  for (Part& p : d.parts) p.group = "ladder";
  d.contacts.push_back(meet("rung", EdgeSide::right, "rail"));
  d.contacts.push_back(meet("rail", EdgeSide::bottom, "floor"));
  Found c = corner(90);
  c.room.floor.slope = {0.005, 0};
  const FitAnswer f = fit_exactly(c, d);
  REQUIRE(f.groups.size() == 1);
  CHECK_THAT(f.groups[0].move.z, WithinAbs(0.005 * 730, 1e-6));
  CHECK_THAT(f.contacts[0].gap.most, WithinAbs(0, 1e-9));
  CHECK(f.contacts[0].gap_sd == 0);
  CHECK(f.groups[0].touches == std::vector<std::string>{"floor"});
}

TEST_CASE("groups: order rules who stands in whose way", "[reference]") {
  Design d = empty_design(20);
  d.parts.push_back(panel("deck", {500, 400}, {0, 0, 700}, kX, kY));
  d.parts.push_back(panel("post", {60, 900}, {500, 100, 0}, kY, kZ));
  d.contacts.push_back(meet("deck", EdgeSide::left, "right wall"));
  d.contacts.push_back(meet("post", PieceFace::back, "deck"));
  d.groups = {tight("deck", {"right wall"}), tight("post", {"deck"})};
  const FitAnswer f = fit_exactly(corner(90, 0, 0.01), d);
  // The right wall leans in: at 710 it has pushed the deck out by 7.2 at its upper edge.
  CHECK_THAT(f.groups[0].move.x, WithinAbs(0.01 * 720, 1e-3));
  CHECK_THAT(f.groups[1].move.x, WithinAbs(0.01 * 720, 1e-3));
  CHECK_THAT(f.contacts[1].gap.most, WithinAbs(0, 1e-3));
}

TEST_CASE("obstacles: a deck is notched round an outlet, one that is not notched stands off",
          "[reference]") {
  for (bool notch : {false, true}) {
    INFO("notched " << notch);
    Found c = corner(90);
    add_outlet(c.survey.walls[0], 600, 680, 70, 9);
    Design d = empty_design(20);
    d.parts.push_back(panel("deck", {1000, 400}, {200, 0, 700}, kX, kY));
    Contact how = meet("deck", EdgeSide::bottom, "left wall");
    how.notch = notch;
    how.clearance = {3};
    d.contacts.push_back(how);
    const FitAnswer f = fit_exactly(c, d);
    CHECK(f.clashes.empty());
    if (!notch) {
      CHECK(f.groups[0].touches.at(0) == "left wall outlet");
      CHECK_THAT(f.contacts[0].gap.least, WithinAbs(0, 1e-3));
      CHECK_THAT(f.groups[0].move.y, WithinAbs(9, 0.5));
      CHECK(f.notches.empty());
      continue;
    }
    CHECK(f.groups[0].touches == std::vector<std::string>{"left wall"});
    CHECK_THAT(f.contacts[0].gap.most, WithinAbs(0, 1e-3));
    REQUIRE(f.notches.size() == 1);
    CHECK(f.notches[0].around == "left wall outlet");
    CHECK_THAT(height(f.notches[0].polygon), WithinAbs(9 + 3, 2e-3));
    CHECK_THAT(width(f.notches[0].polygon), WithinAbs(70 + 2 * 3, 2e-3));
    CHECK_THAT(box_of(f.notches[0].polygon).low.x, WithinAbs(600 - 3 - 200, 2e-3));
  }
}

TEST_CASE("obstacles: a ledger is cut out over an outlet it covers", "[reference]") {
  Found c = corner(90);
  add_outlet(c.survey.walls[0], 600, 720, 50, 9);
  Design d = empty_design(38);
  d.parts.push_back(panel("ledger", {1000, 90}, {1200, 0, 700}, {-1, 0, 0}, kZ));
  Contact how = meet("ledger", PieceFace::back, "left wall", Fitting::shim);
  how.notch = true;
  how.clearance = {3};
  d.contacts.push_back(how);
  const FitAnswer f = fit_exactly(c, d);
  REQUIRE(f.notches.size() == 1);
  CHECK_THAT(width(f.notches[0].polygon), WithinAbs(56, 2e-3));
  CHECK_THAT(height(f.notches[0].polygon), WithinAbs(56, 2e-3));
  // u runs from x = 1200 back: the outlet from 650 to 600.
  CHECK_THAT(box_of(f.notches[0].polygon).low.x, WithinAbs(1200 - 650 - 3, 2e-3));
  CHECK(f.clashes.empty());
  CHECK_THAT(f.contacts[0].gap.most, WithinAbs(0, 1e-3));
}

TEST_CASE("notch: one that leaves a neck or comes near a cutout is warned of", "[reference]") {
  Found c = corner(90);
  add_board(c.survey.walls[0], 130, 15);
  Design d = empty_design(18);
  d.parts.push_back(panel("panel", {400, 1000}, {800, 0, 0}, kY, kZ));
  Cutout hole;
  hole.name = "porthole";
  hole.outline = {{30, 60}, {90, 60}, {90, 120}, {30, 120}};
  d.parts[0].cutouts.push_back(hole);
  Contact how = meet("panel", EdgeSide::left, "left wall");
  how.notch = true;
  d.contacts.push_back(how);
  const FitAnswer f = fit_exactly(c, d);
  REQUIRE(f.notches.size() == 1);
  REQUIRE_FALSE(f.notches[0].warnings.empty());
  CHECK(f.notches[0].warnings[0].find("porthole") != std::string::npos);
}

TEST_CASE("notch: a profile notch follows the molding, never short of board and clearance",
          "[reference]") {
  Found c = corner(90);
  add_board(c.survey.walls[0], 120, 16);
  c.survey.walls[0].baseboard->profile = {{{0}, {16}}, {{80}, {16}}, {{120}, {6}}};
  Design d = empty_design(18);
  d.parts.push_back(panel("panel", {400, 1000}, {800, 0, 0}, kY, kZ));
  Contact how = meet("panel", EdgeSide::left, "left wall");
  how.notch = how.notch_profile = true;
  how.clearance = {3};
  d.contacts.push_back(how);
  const FitAnswer f = fit_exactly(c, d);
  REQUIRE(f.notches.size() == 1);
  const Region notch{f.notches[0].polygon, {}};
  CHECK_THAT(width(f.notches[0].polygon), WithinAbs(19, 0.07));
  CHECK(contains(notch, {18.9, 40}));
  // Beside the slope at v = 110: the board is 8.5 out there, its normal leans by 1 : 4.
  CHECK(contains(notch, {8.5 + 3 * std::sqrt(1 + 1.0 / 16) - 0.01, 110}));
  CHECK_FALSE(contains(notch, {8.5 + 3 * std::sqrt(1 + 1.0 / 16) * 1.03, 110}));
  CHECK_FALSE(contains(notch, {15, 115}));
}

TEST_CASE("clearance: pieces that only come near each other are told with their distance",
          "[reference]") {
  Design d = empty_design(20);
  d.parts.push_back(panel("one", {300, 300}, {500, 500, 500}, kX, kY));
  d.parts.push_back(panel("other", {300, 300}, {812, 500, 525}, kX, kY));
  const FitAnswer f = fit_exactly(corner(90), d);
  REQUIRE(f.clearances.size() == 1);
  // 12 beside and 5 above.
  CHECK_THAT(f.clearances[0].least_mm, WithinAbs(13, 1e-6));
}

TEST_CASE("heights: what hangs goes by the level line, what is told to stands by the floor",
          "[reference]") {
  Found c = corner(90);
  c.room.floor.slope = {0.01, 0};
  Design d = empty_design(20);
  d.parts.push_back(panel("shelf", {500, 200}, {400, 0, 900}, kX, kY));
  d.contacts.push_back(meet("shelf", EdgeSide::bottom, "left wall"));
  CHECK_THAT(fit_exactly(c, d).groups[0].move.z, WithinAbs(0, 1e-9));
  Group g;
  g.name = "shelf";
  g.height_from = HeightFrom::floor;
  d.groups.push_back(g);
  CHECK_THAT(fit_exactly(c, d).groups[0].move.z, WithinAbs(0.01 * 900, 1e-6));
}

TEST_CASE("pieces that lean: a ladder at a slope stands on its lower corner", "[reference]") {
  Design d = empty_design(30);
  Part rail = panel("rail", {80, 1500}, {600, 500, 0}, kX, kZ);
  rail.place_in_room.lean = degrees(-15);  // about u: its top goes back, away from -y
  d.parts.push_back(rail);
  d.contacts.push_back(meet("rail", EdgeSide::bottom, "floor", Fitting::shim));
  const FitAnswer f = fit_exactly(corner(90), d);
  REQUIRE(f.contacts[0].meets_anything);
  CHECK_THAT(std::min(f.contacts[0].front[0].gap, f.contacts[0].back[0].gap), WithinAbs(0, 1e-6));
  // Along the leaning piece the other face is open by its thickness times the tangent.
  CHECK_THAT(std::abs(f.contacts[0].front[0].gap - f.contacts[0].back[0].gap),
             WithinAbs(30 * std::tan(15 * std::acos(-1.0) / 180), 1e-6));
}

TEST_CASE("notches: a board far below a panel on the wall takes none, on a sloping floor too") {
  Found c = corner(90);
  c.room.floor.slope = {0.003, 0.002};
  add_board(c.survey.walls[0], 108, 13);
  for (double z : {254.0, 60.0}) {
    INFO("the panel hangs " << z << " up");
    Design d = empty_design(18);
    d.parts.push_back(panel("panel", {1000, 700}, {1200, 0, z}, {-1, 0, 0}, kZ));
    d.contacts.push_back(meet("panel", PieceFace::back, "left wall", Fitting::shim));
    d.contacts[0].notch = true;
    const FitAnswer f = fit_exactly(c, d);
    REQUIRE(f.notches.size() == (z < 108 ? 1 : 0));
    // The floor rises by 3.6 mm to the panel's end: the board reaches 108 + 3.6 - 60 up on it.
    if (z < 108) CHECK_THAT(height(f.notches[0].polygon), WithinAbs(51.6 + in / 8, 0.1));
  }
}

TEST_CASE("clearance: a piece is looked at with its notches cut", "[reference]") {
  // A cap 20 off the wall, a pipe beside it reaching to 28: the notch leaves 5 all round.
  Found c = corner(90);
  add_outlet(c.survey.walls[0], 600, 700, 50, 28);
  Design d = empty_design(18);
  d.parts.push_back(panel("side", {1000, 400}, {1200, 20, 500}, {-1, 0, 0}, kZ));
  Contact how = meet("side", PieceFace::back, "left wall", Fitting::clear);
  how.gap = {5};
  how.notch = true;
  how.clearance = {5};
  d.contacts.push_back(how);
  const FitAnswer f = fit_exactly(c, d);
  REQUIRE(f.notches.size() == 1);
  REQUIRE_FALSE(f.clearances.empty());
  CHECK_THAT(f.clearances[0].least_mm, WithinAbs(5, 2e-3));
  CHECK(f.clearances[0].verdict == Verdict::fits);
}

TEST_CASE("clearance: pieces that overlap are 0 apart in the draws too until they part",
          "[reference]") {
  // The shelf hangs 4 into the post; where the wall it is pushed to lies 1 back, it is 3 in.
  const Found c = corner(90);
  Design d = empty_design(20);
  d.parts.push_back(panel("shelf", {500, 200}, {400, 0, 900}, kX, kY));
  d.parts.push_back(panel("post", {100, 2000}, {500, 196, 0}, kX, kZ));
  d.contacts.push_back(meet("shelf", EdgeSide::bottom, "left wall"));
  Contact how = meet("shelf", EdgeSide::top, "post", Fitting::clear);
  how.gap = {2};
  d.contacts.push_back(how);
  Group stays;
  stays.name = "shelf";
  stays.turn = false;
  d.groups.push_back(stays);
  std::vector<RoomShape> draws(20, c.room);
  for (RoomShape& draw : draws) draw.walls[0].start.y = -1;
  const FitAnswer f = fit({c.survey, d, c.room, draws, 0.95, true});
  REQUIRE_FALSE(f.clearances.empty());
  CHECK(f.clearances[0].least_mm == 0);
  CHECK(f.clearances[0].chance == 0);
  CHECK(f.clearances[0].verdict == Verdict::does_not_fit);
}

TEST_CASE("notch: one that takes a whole edge off is warned of") {
  Found c = corner(90);
  add_board(c.survey.walls[0], 150, 20);
  Design d = empty_design(18);
  d.parts.push_back(panel("side", {480, 1000}, {680, 15, 0}, {-1, 0, 0}, kZ));
  Contact how = meet("side", PieceFace::back, "left wall", Fitting::clear);
  how.gap = {5};
  how.notch = true;
  d.contacts.push_back(how);
  const FitAnswer f = fit_exactly(c, d);
  REQUIRE_FALSE(f.notches.empty());
  const auto& words = f.notches[0].warnings;
  CHECK(std::count(words.begin(), words.end(), "takes the whole bottom edge off") == 1);
  CHECK(f.notches[0].ruins == "takes the whole bottom edge off");
  CHECK(f.verdict == Verdict::does_not_fit);
}

TEST_CASE("edge-cannot-meet: a beam that only lies along a post does not run into it",
          "[reference]") {
  // The beam's back lies on the post's front; `ahead` of it the beam ends in front of the post.
  for (const bool ahead : {false, true}) {
    Design d = empty_design(38);
    d.parts.push_back(panel("post", {90, 900}, {500, 410, 0}, kY, kZ));
    const double x = ahead ? 500 : 538;
    d.parts.push_back(panel("beam", {ahead ? 400.0 : 500.0, 90}, {x, 0, 700}, kY, kZ));
    d.contacts.push_back(meet("beam", EdgeSide::right, "post", Fitting::clear));
    const FitAnswer f = fit_exactly(corner(90), d);
    CHECK(f.contacts[0].meets_anything == ahead);
    if (ahead) CHECK_THAT(f.contacts[0].gap.most, WithinAbs(10, 1e-6));
  }
}

TEST_CASE("heights: a piece that is scribed to the floor does not lift its group", "[reference]") {
  // A stile drawn 20 too long for the scribe beside sides that stand.
  Design d = empty_design(18);
  d.parts.push_back(panel("side", {400, 900}, {500, 500, 0}, kX, kZ));
  d.parts.push_back(panel("stile", {50, 920}, {500, 480, -20}, kX, kZ));
  for (Part& part : d.parts) part.group = "case";
  d.contacts.push_back(meet("side", EdgeSide::bottom, "floor", Fitting::shim));
  d.contacts.push_back(meet("stile", EdgeSide::bottom, "floor", Fitting::scribe));
  const FitAnswer f = fit_exactly(corner(90), d);
  CHECK_THAT(f.groups[0].move.z, WithinAbs(0, 1e-6));
  CHECK_THAT(f.contacts[1].gap.least, WithinAbs(-20, 1e-6));
  CHECK(f.contacts[1].verdict == Verdict::fits);
  d.contacts.erase(d.contacts.begin());  // by itself a scribed piece does stand
  CHECK_THAT(fit_exactly(corner(90), d).groups[0].move.z, WithinAbs(20, 1e-6));
}

TEST_CASE("edge-cannot-meet: what looks away from its wall is told and pulled nowhere") {
  Design d = empty_design(38);
  d.parts.push_back(panel("ledger", {700, 90}, {900, 0, 900}, {-1, 0, 0}, kZ));
  d.contacts.push_back(meet("ledger", PieceFace::front, "left wall"));
  d.groups.push_back(tight("ledger", {"left wall"}));
  FitAnswer f = fit_exactly(corner(90), d);
  REQUIRE(f.contacts.size() == 1);
  CHECK(f.contacts[0].faces_away);
  CHECK(f.contacts[0].verdict == Verdict::does_not_fit);
  CHECK_THAT(f.frames[0].at.y, WithinAbs(0, 1e-6));
  d.contacts[0].by = Fitting::clear;
  CHECK(fit_exactly(corner(90), d).contacts[0].verdict == Verdict::does_not_fit);
  d.contacts[0] = meet("ledger", PieceFace::back, "left wall");
  f = fit_exactly(corner(90), d);
  CHECK_FALSE(f.contacts[0].faces_away);
  CHECK(f.contacts[0].verdict == Verdict::fits);
}

TEST_CASE("clearance: what is asked for counts, however far that is", "[reference]") {
  Design d = empty_design(20);
  d.parts.push_back(panel("arm", {300, 300}, {500, 500, 500}, kX, kY));
  d.parts.push_back(panel("post", {300, 300}, {880, 500, 500}, kX, kY));
  Contact how = meet("arm", EdgeSide::left, "post", Fitting::clear);  // its far edge looks away
  how.gap = {100};
  d.contacts.push_back(how);
  const FitAnswer f = fit_exactly(corner(90), d);
  REQUIRE(f.clearances.size() == 1);
  CHECK_THAT(f.clearances[0].least_mm, WithinAbs(80, 1e-6));
  CHECK(f.clearances[0].verdict == Verdict::does_not_fit);
}

TEST_CASE("clearance: a heater is kept clear of by what is asked, beside the wall too",
          "[reference]") {
  Found c = corner(90);
  add_outlet(c.survey.walls[0], 1000, 300, 400, 100);
  Design d = empty_design(20);
  d.parts.push_back(panel("side", {300, 90}, {940, 175, 400}, {-1, 0, 0}, kZ));
  for (const double asked : {90.0, 100.0}) {
    Contact how = meet("side", PieceFace::back, "left wall", Fitting::clear);
    how.gap = {asked};
    d.contacts = {how};
    const FitAnswer f = fit_exactly(c, d);
    REQUIRE_FALSE(f.clearances.empty());
    if (asked > 96) CHECK_THAT(f.clearances[0].least_mm, WithinAbs(std::hypot(60, 75), 1e-3));
    CHECK((f.clearances[0].verdict == Verdict::fits) == (asked < 96));
  }
}

TEST_CASE("walls: a piece on the fourth wall of a closed room starts where it is drawn") {
  Found c = corner(90);
  c.room.walls[0].length = 2000, c.room.walls[1].length = 1000;
  c.room.walls.push_back({"back", {0, 1000}, {1, 0}, {0, -1}, 2000, 0, {}, 0, 0, 0, 0});
  c.room.walls.push_back({"end", {2000, 1000}, {0, -1}, {-1, 0}, 1000, 0, {}, 0, 0, 0, 0});
  for (const char* name : {"back", "end"}) {
    c.survey.walls.emplace_back();
    c.survey.walls.back().name = name;
  }
  Design d = empty_design(38);
  d.parts.push_back(panel("cleat", {400, 90}, {2000, 300, 900}, kY, kZ));
  d.parts[0].place_in_room = {{2000, 700, 900}, {0, -1, 0}, kZ, {}, {}};
  d.contacts.push_back(meet("cleat", PieceFace::back, "end wall"));
  const FitAnswer f = fit_exactly(c, d);
  CHECK(f.verdict == Verdict::fits);
  CHECK_THAT(f.frames[0].at.x, WithinAbs(2000, 1e-6));
  CHECK_THAT(f.frames[0].at.y, WithinAbs(700, 1e-6));
}

TEST_CASE("turn: what stands across to its one wall is not turned with it, what lies along is") {
  const Found c = corner(88.7);
  Design d = empty_design(18);
  d.parts.push_back(panel("board", {1000, 400}, {0, 400, 0}, kX, kZ));  // its left edge meets
  d.contacts.push_back(meet("board", EdgeSide::left, "right wall"));
  const FitAnswer across = fit_exactly(c, d);
  CHECK_THAT(across.frames[0].u.y, WithinAbs(0, 1e-9));
  Group stays;
  stays.name = "board";
  stays.turn = false;
  d.parts[0] = panel("board", {1000, 400}, {0, 300, 500}, kY, kZ);
  d.contacts[0] = meet("board", PieceFace::back, "right wall");
  const FitAnswer along = fit_exactly(c, d);
  CHECK_THAT(along.frames[0].u.x, WithinAbs(c.room.walls[1].along.x, 1e-6));
  d.groups.push_back(stays);
  CHECK_THAT(fit_exactly(c, d).frames[0].u.x, WithinAbs(0, 1e-9));
}

TEST_CASE("parallel_to: a piece at the right wall is turned where it is, not slid") {
  const Found c = corner(88.7);
  Design d = empty_design(18);
  d.parts.push_back(panel("board", {400, 400}, {0, 700, 0}, kY, kZ));
  d.contacts.push_back(meet("board", PieceFace::back, "right wall"));
  Group along = tight("board", {"right wall"});
  along.parallel_to = "left wall";
  along.turn = false;
  d.groups.push_back(along);
  const FitAnswer f = fit_exactly(c, d);
  CHECK_THAT(f.frames[0].u.x, WithinAbs(0, 1e-9));
  // Its middle stays 900 up the wall but for the way that the wall leads it.
  CHECK_THAT((f.frames[0].at + 200 * f.frames[0].u).y, WithinAbs(900, 1));
}

TEST_CASE("scribe: what stands too high until its bottom is scribed is not cut at its top too") {
  Found c = corner(90);
  c.room.floor.slope = {0.012, 0};  // rises 12 in 1000
  Design d = empty_design(18);
  d.parts.push_back(panel("board", {1000, 400}, {5, 300, 0}, kX, kZ));
  d.parts.push_back(panel("top", {1200, 600}, {5, 0, 400}, kX, kY));
  d.contacts.push_back(meet("top", EdgeSide::bottom, "left wall"));
  d.contacts.push_back(meet("board", EdgeSide::top, "top"));
  FitAnswer f = fit_exactly(c, d);
  CHECK(f.contacts[1].verdict == Verdict::does_not_fit);
  CHECK(f.contacts[1].eased_by.empty());
  d.contacts.push_back(meet("board", EdgeSide::bottom, "floor", Fitting::scribe));
  f = fit_exactly(c, d);
  CHECK(f.contacts[1].gap.least < -10);
  CHECK(f.contacts[1].eased_by == "edge edge at the floor");
  CHECK(f.contacts[1].verdict == Verdict::fits);
  CHECK(f.verdict == Verdict::fits);
}
