// Fits that ordinary geometry gives in closed form.
#include <catch2/catch.hpp>

#include "fit/find_floor.h"
#include "fit/rooms_by_hand.h"
#include "solid/polygon.h"

using namespace nook;
using namespace nook::by_hand;
using Catch::WithinAbs;

namespace {

double rad(double deg) {
  return deg * std::acos(-1.0) / 180;
}

Design square_panel(double show_thickness = 18) {
  Design d = empty_design(show_thickness);
  d.parts.push_back(panel("panel", {600, 600}, {0, 0, 400}, kX, kY));
  d.contacts.push_back(meet("panel", EdgeSide::bottom, "left wall"));
  d.contacts.push_back(meet("panel", EdgeSide::left, "right wall"));
  d.groups.push_back(tight("panel", {"left wall"}));
  return d;
}

// 1006 long between walls 1000 apart, drawn so far off the wall behind it that it is tight to.
Design shelf_between(double off) {
  Design d = empty_design();
  d.parts.push_back(panel("shelf", {1006, 300}, {300 + off, -3, 500}, kY, {-1, 0, 0}));
  d.contacts.push_back(meet("shelf", EdgeSide::top, "right wall"));
  d.contacts.push_back(meet("shelf", EdgeSide::left, "left wall"));
  d.contacts.push_back(meet("shelf", EdgeSide::right, "far wall"));
  d.groups.push_back(tight("shelf", {"right wall"}));
  return d;
}

const ClearanceFit* clearance(const FitAnswer& f, const std::string& from) {
  for (const ClearanceFit& c : f.clearances)
    if (c.from == from) return &c;
  return nullptr;
}

}  // namespace

TEST_CASE("closed form: a square deck in a corner of 90 + a opens by 600 tan a", "[reference]") {
  for (double a : {-8.0, -1.0, -0.01, 0.0, 0.3, 2.0, 9.0}) {
    INFO("corner " << 90 + a);
    const FitAnswer f = fit_exactly(corner(90 + a), square_panel());
    CHECK_THAT(f.contacts[0].gap.most, WithinAbs(0, 1e-3));
    CHECK_THAT(f.contacts[1].gap.least, WithinAbs(0, 1e-3));
    CHECK_THAT(f.contacts[1].gap.most, WithinAbs(600 * std::tan(rad(std::abs(a))), 2e-3));
    CHECK_THAT(f.contacts[1].taper_deg, WithinAbs(std::abs(a), 1e-3));
  }
}

TEST_CASE("closed form: a corner off by 1e-9 rad is a square one", "[reference]") {
  const FitAnswer f = fit_exactly(corner(90 + 1e-9 * 180 / std::acos(-1.0)), square_panel());
  CHECK_THAT(f.contacts[1].gap.most, WithinAbs(0, 1e-4));
  CHECK(f.clashes.empty());
  CHECK(f.verdict == Verdict::fits);
}

TEST_CASE("closed form: without a wall to be tight to, the wedge is shared", "[reference]") {
  Design d = square_panel();
  d.groups.clear();
  const FitAnswer f = fit_exactly(corner(91.4), d);
  // A square in a corner of 90 + a turns until both gaps are equal: by half of a, but each edge
  // touches near the corner; the far ends open by 600 tan (a / 2).
  CHECK_THAT(f.contacts[0].gap.most, WithinAbs(f.contacts[1].gap.most, 1e-3));
  CHECK_THAT(f.contacts[0].gap.most, WithinAbs(600 * std::tan(rad(0.7)), 0.01));
  CHECK_THAT(f.groups[0].turn_deg, WithinAbs(0.7, 1e-3));
}

TEST_CASE("closed form: a panel by a wall of lean m opens by m times its height", "[reference]") {
  for (double m : {-0.02, -0.004, 0.0, 0.004, 0.02}) {
    INFO("lean " << m);
    Design d = empty_design();
    d.parts.push_back(panel("panel", {500, 2000}, {900, 0, 0}, kY, kZ));
    d.contacts.push_back(meet("panel", EdgeSide::left, "left wall", Fitting::scribe));
    const FitAnswer f = fit_exactly(corner(90, m), d);
    CHECK_THAT(f.contacts[0].gap.least, WithinAbs(0, 1e-3));
    CHECK_THAT(f.contacts[0].gap.most, WithinAbs(2000 * std::abs(m), 1e-3));
    if (m != 0) CHECK_THAT(f.contacts[0].touches_at, WithinAbs(m > 0 ? 2000 : 0, 1e-6));
    CHECK_THAT(f.contacts[0].taper_deg, WithinAbs(std::atan(std::abs(m)) / rad(1), 1e-3));
    CHECK(f.contacts[0].verdict == Verdict::fits);
  }
}

TEST_CASE("closed form: two ledgers each lie on their own wall", "[reference]") {
  Design d = empty_design(38);
  d.parts.push_back(panel("left ledger", {1000, 90}, {1100, 0, 900}, {-1, 0, 0}, kZ));
  d.parts.push_back(panel("right ledger", {800, 90}, {0, 100, 900}, kY, kZ));
  d.contacts.push_back(meet("left ledger", PieceFace::back, "left wall", Fitting::shim));
  d.contacts.push_back(meet("right ledger", PieceFace::back, "right wall", Fitting::shim));
  const FitAnswer f = fit_exactly(corner(93), d);
  CHECK_THAT(f.groups[0].turn_deg, WithinAbs(0, 1e-6));
  CHECK_THAT(f.groups[1].turn_deg, WithinAbs(3, 1e-6));
  for (const ContactFit& c : f.contacts) {
    CHECK_THAT(c.gap.most, WithinAbs(0, 1e-3));
    CHECK(c.field.size() > 20);
  }
}

TEST_CASE("closed form: a ledger over a hollow touches at its ends and is open in the middle",
          "[reference]") {
  // One sine bow of the wall, 2000 + 2 x 1000 mm long (the functions' margin is 2.5 reaches): the
  // hollow is deepest at 1000 along.
  Found c = corner(90);
  Field& field = c.room.walls[0].field;
  field.basis = std::make_shared<FieldBasis>(Vec2{0, 0}, Vec2{2000, 2000}, 400);
  field.weights.assign(field.basis->size(), 0);
  field.weights[0] = -9000;
  const auto surface = [&](double a, double z) {
    const double s = 2.0 / 4000, pi = std::acos(-1.0);
    return -9000 * s * std::sin(pi * (a + 1000) / 4000) * std::sin(pi * (z + 1000) / 4000);
  };
  Design d = empty_design(38);
  d.parts.push_back(panel("ledger", {1000, 10}, {1500, 0, 995}, {-1, 0, 0}, kZ));
  d.contacts.push_back(meet("ledger", PieceFace::back, "left wall", Fitting::shim));
  const FitAnswer f = fit_exactly(c, d);
  CHECK_THAT(f.contacts[0].gap.least, WithinAbs(0, 1e-3));
  CHECK_THAT(f.contacts[0].gap.most, WithinAbs(surface(500, 995) - surface(1000, 1000), 0.01));
  CHECK_THAT(f.groups[0].turn_deg, WithinAbs(0, 1e-6));
}

TEST_CASE("closed form: a panel parallel to the right wall stands askew on the left one",
          "[reference]") {
  Design d = empty_design(18);
  d.parts.push_back(panel("front", {900, 2000}, {1200, 0, 0}, kY, kZ));
  d.contacts.push_back(meet("front", EdgeSide::left, "left wall"));
  Group g = tight("front", {"left wall"});
  g.turn = false;
  g.parallel_to = "right wall";
  d.groups.push_back(g);
  const FitAnswer f = fit_exactly(corner(91.4), d);
  CHECK_THAT(f.groups[0].turn_deg, WithinAbs(1.4, 1e-6));
  // One face touches; both show, and the other is open by the thickness times the tangent.
  CHECK_THAT(std::min(f.contacts[0].front[0].gap, f.contacts[0].back[0].gap), WithinAbs(0, 1e-3));
  CHECK_THAT(f.contacts[0].gap.most, WithinAbs(18 * std::tan(rad(1.4)), 1e-3));
  CHECK_THAT(std::abs(f.contacts[0].front[0].gap - f.contacts[0].back[0].gap),
             WithinAbs(18 * std::tan(rad(1.4)), 1e-3));
  CHECK_THAT(f.contacts[0].bevel_mm, WithinAbs(18 * std::tan(rad(1.4)), 1e-3));
}

TEST_CASE("closed form: a ladder rail 1 in off the wall clears a 9/16 in board by 7/16",
          "[reference]") {
  Found c = corner(90);
  add_board(c.survey.walls[0], 5.25 * in, 9.0 / 16 * in);
  Design d = empty_design(1.25 * in);
  d.parts.push_back(panel("rail", {80 * in, 3 * in}, {500, in, 0}, kZ, kX));
  Contact how = meet("rail", PieceFace::back, "left wall", Fitting::clear);
  how.gap = inches(1.0 / 4);
  d.parts[0].place_in_room.v = {-1, 0, 0};
  d.parts[0].place_in_room.at.x += 3 * in;
  // u up, v along -x: the thickness comes out of u x v = -y, so the front looks at the wall.
  how.edge = PieceFace::front;
  d.parts[0].place_in_room.at.y = in + 1.25 * in;
  d.contacts.push_back(how);
  const FitAnswer f = fit_exactly(c, d);
  const ClearanceFit* wall = clearance(f, "left wall");
  REQUIRE(wall);
  CHECK_THAT(wall->least_mm, WithinAbs(7.0 / 16 * in, 1e-3));
  CHECK(wall->verdict == Verdict::fits);
  REQUIRE(clearance(f, "left wall baseboard"));
  CHECK_THAT(clearance(f, "left wall baseboard")->least_mm, WithinAbs(7.0 / 16 * in, 1e-3));
  CHECK(f.clashes.empty());
}

TEST_CASE("closed form: a shelf too wide for its alcove overlaps both side walls alike",
          "[reference]") {
  Found c = corner(90);
  c.room.walls[1].length = 1000;
  WallShape far{"far", {0, 1000}, {1, 0}, {0, -1}, 3000, 0, {}, 0, 0, 0, 0};
  c.room.walls.push_back(far);
  c.survey.walls.resize(3);
  c.survey.walls[2].name = "far";
  const FitAnswer f = fit_exactly(c, shelf_between(0));
  CHECK_THAT(f.contacts[0].gap.most, WithinAbs(0, 1e-3));
  CHECK_THAT(f.contacts[1].gap.most, WithinAbs(-3, 1e-3));
  CHECK_THAT(f.contacts[2].gap.most, WithinAbs(-3, 1e-3));
  CHECK(f.verdict == Verdict::does_not_fit);
  CHECK(f.clashes.size() == 2);
}

TEST_CASE("closed form: what does not go in anyway is not left off its tight wall to overlap less",
          "[reference]") {
  // The cheeks open to the front by 12 and 6 in 1000: 8 mm out the shelf would overlap .15 less.
  for (const double off : {0.0, 8.0, 20.0}) {
    CAPTURE(off);
    Found c = corner(90);
    c.room.walls[1].length = 1000;
    c.room.walls[0].along = {std::cos(0.012), -std::sin(0.012)};
    c.room.walls[0].out = {std::sin(0.012), std::cos(0.012)};
    WallShape far{"far",
                  {0, 1000},
                  {std::cos(0.006), std::sin(0.006)},
                  {std::sin(0.006), -std::cos(0.006)},
                  3000,
                  0,
                  {},
                  0,
                  0,
                  0,
                  0};
    c.room.walls.push_back(far);
    c.survey.walls.resize(3);
    c.survey.walls[2].name = "far";
    const FitAnswer f = fit_exactly(c, shelf_between(off));
    CHECK_THAT(f.contacts[0].gap.most, WithinAbs(0, 1e-3));
    CHECK_THAT(f.contacts[1].gap.least, WithinAbs(f.contacts[2].gap.least, 0.05));
  }
}

TEST_CASE("closed form: a standing panel is as high as the highest spot under it", "[reference]") {
  Found c = corner(90);
  c.room.floor.slope = {0.004, -0.002};
  Design d = empty_design(18);
  d.parts.push_back(panel("panel", {800, 900}, {500, 0, 0}, kX, kZ));
  d.contacts.push_back(meet("panel", EdgeSide::bottom, "floor", Fitting::shim));
  d.parts[0].place_in_room.at.y = 200;
  const FitAnswer f = fit_exactly(c, d);
  // u along x, v up: the thickness goes towards -y. Highest at x = 1300, y = 182.
  CHECK_THAT(f.groups[0].move.z, WithinAbs(0.004 * 1300 - 0.002 * 182, 1e-6));
  CHECK_THAT(f.contacts[0].front.back().gap, WithinAbs(0, 1e-6));
  CHECK_THAT(f.contacts[0].front.front().gap, WithinAbs(0.004 * 800, 1e-6));
  REQUIRE(f.floor.size() == 1);
  CHECK_THAT(f.floor[0].shim_mm, WithinAbs(0.004 * 800 + 0.002 * 18, 1e-6));
}

TEST_CASE("closed form: an edge along the wall cannot meet it", "[reference]") {
  Design d = empty_design();
  d.parts.push_back(panel("panel", {800, 900}, {900, 0, 0}, {-1, 0, 0}, kZ));
  d.contacts.push_back(meet("panel", EdgeSide::left, "left wall"));
  const FitAnswer f = fit_exactly(corner(90), d);
  CHECK_FALSE(f.contacts[0].meets_anything);
  CHECK(f.contacts[0].verdict == Verdict::does_not_fit);
}

TEST_CASE("carpet: rails on the tested block sink as the test did", "[reference]") {
  // Rungs 11, 22, 33, 44 up and a deck at 55: squashed by 3/8 the last step is 11 3/8.
  Floor floor;
  floor.covering = Covering{"carpet", inches(5.0 / 8), {}};
  floor.squash.push_back({180 * 4.448222, {inches(3), inches(1.25)}, inches(3.0 / 8), {}});
  const double pressure = 200 * 4.448222 / (3 * 1.25 * in * in);
  CHECK_THAT(squash_under(floor, pressure).likely, WithinAbs(3.0 / 8 * in, 1e-9));
  const SquashRange more = squash_under(floor, 3 * pressure);
  CHECK(more.likely > 3.0 / 8 * in);
  CHECK(more.most <= 5.0 / 8 * in);
  floor.squash.clear();
  const SquashRange untold = squash_under(floor, pressure);
  CHECK(untold.least == 0);
  CHECK_THAT(untold.most, WithinAbs(5.0 / 8 * in, 1e-9));
}

TEST_CASE("carpet: a ladder sinks, a foot on the tack strip does not", "[reference]") {
  Found c = corner(90);
  c.survey.floor.covering = Covering{"carpet", inches(5.0 / 8), inches(1.25)};
  c.survey.floor.squash.push_back({180 * 4.448222, {inches(3), inches(1.25)}, inches(3.0 / 8), {}});
  Design d = empty_design(1.25 * in);
  d.parts.push_back(panel("rail", {80 * in, 3 * in}, {500, 900, 0}, kZ, {0, -1, 0}));
  d.parts.push_back(panel("post", {80 * in, 3 * in}, {900, 3 * in, 0}, kZ, {0, -1, 0}));
  for (const char* name : {"rail", "post"}) {
    Foot foot;
    foot.part = name;
    foot.load_n = 200 * 4.448222;
    d.feet.push_back(foot);
  }
  const FitAnswer f = fit_exactly(c, d);
  REQUIRE(f.floor.size() == 2);
  CHECK_THAT(f.floor[0].squash_mm, WithinAbs(3.0 / 8 * in, 1e-6));
  CHECK_FALSE(f.floor[0].on_tack_strip);
  CHECK(f.floor[1].on_tack_strip);
  CHECK_THAT(f.floor[1].squash_mm, WithinAbs(0, 1e-9));
}

TEST_CASE("missing readings: nothing is told", "[reference]") {
  const Found c = corner(90);
  const Design d = square_panel();
  const std::vector<RoomShape> none;
  const FitAnswer f = fit({c.survey, d, c.room, none, 0.95, false});
  CHECK_FALSE(f.known);
  CHECK(f.verdict == Verdict::cannot_tell);
  REQUIRE(f.contacts.size() == 2);
  CHECK(f.contacts[0].verdict == Verdict::cannot_tell);
  CHECK(f.groups.empty());
}
