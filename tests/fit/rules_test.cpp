// Rules of the fit, each by a small design with a known answer.
#include <catch2/catch.hpp>

#include <algorithm>
#include <optional>

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

TEST_CASE("edge-cannot-meet: an edge that runs square into the wall, whatever its size and turn") {
  for (const double size : {18.0, 20.0, 305.0})
    for (const double degrees : {90.0, 88.6, 30.0})
      for (const bool turn : {false, true}) {
        CAPTURE(size, degrees, turn);
        Design d = empty_design(18);
        d.parts.push_back(panel("block", {size, size}, {400, 0, 0}, {-1, 0, 0}, kZ));
        d.parts.push_back(panel("plinth", {762, size}, {0, 0, 0}, kX, kY));
        d.contacts.push_back(meet("block", EdgeSide::top, "left wall"));
        d.contacts.push_back(meet("plinth", EdgeSide::right, "left wall"));
        d.groups = {standing_still("block"), standing_still("plinth")};
        d.groups[0].turn = d.groups[1].turn = turn;
        Found room = corner(degrees);
        add_board(room.survey.walls[0], 100, 12);
        const FitAnswer f = fit_exactly(room, d);
        CHECK_FALSE(f.contacts[0].meets_anything);
        CHECK_FALSE(f.contacts[1].meets_anything);
        CHECK(f.verdict == Verdict::does_not_fit);
      }
}

TEST_CASE("wall's end: what reaches past it cannot be told, and no board is met there",
          "[reference]") {
  Found room = corner(90);
  room.room.walls[0].length = 1000;
  add_board(room.survey.walls[0], 100, 12);
  Design d = empty_design(18);
  d.parts.push_back(panel("deck", {1400, 300}, {0, 0, 700}, kX, kY));
  d.parts.push_back(panel("panel", {300, 600}, {1200, 0, 0}, kY, kZ));
  d.contacts.push_back(meet("deck", EdgeSide::bottom, "left wall"));
  d.contacts.push_back(meet("panel", EdgeSide::left, "left wall"));
  d.contacts.back().notch = true;
  d.groups = {standing_still("deck"), standing_still("panel")};
  const FitAnswer untold = fit_exactly(room, d);  // nothing says how far the wall goes on
  CHECK(untold.contacts[0].past_mm == 0);
  CHECK(untold.notches.size() == 1);
  Reading length;
  length.value = millimetres(1000);
  room.survey.walls[0].length = {length};
  const FitAnswer f = fit_exactly(room, d);
  CHECK_THAT(f.contacts[0].past_mm, WithinAbs(400, 1e-6));
  CHECK_THAT(f.contacts[1].past_mm, WithinAbs(218, 1e-6));
  CHECK(f.contacts[0].verdict == Verdict::cannot_tell);
  CHECK(f.verdict == Verdict::cannot_tell);
  CHECK(f.notches.empty());
  d.parts[0].outline = {{0, 0}, {1000, 0}, {1000, 300}, {0, 300}};
  CHECK(fit_exactly(room, d).contacts[0].verdict == Verdict::fits);
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

TEST_CASE("placement: tight to the walls in the order that is named", "[reference]") {
  // In a corner of 92 degrees the wall named first is met all along; the wedge is at the other one.
  for (bool left_first : {true, false}) {
    INFO("left wall first: " << left_first);
    Design d = empty_design(18);
    d.parts.push_back(panel("deck", {500, 400}, {0, 0, 700}, kX, kY));
    d.contacts.push_back(meet("deck", EdgeSide::bottom, "left wall"));
    d.contacts.push_back(meet("deck", EdgeSide::left, "right wall"));
    d.groups.push_back(left_first ? tight("deck", {"left wall", "right wall"})
                                  : tight("deck", {"right wall", "left wall"}));
    const FitAnswer f = fit_exactly(corner(92), d);
    const double wedge = (left_first ? 400 : 500) * std::tan(rad(2));
    CHECK_THAT(f.contacts[left_first ? 0 : 1].gap.most, WithinAbs(0, 1e-3));
    CHECK_THAT(f.contacts[left_first ? 1 : 0].gap.most, WithinAbs(wedge, 2e-3));
  }
}

TEST_CASE("placement: a piece turns where its contacts span 300 mm, or is told to", "[reference]") {
  const auto turned = [](Vec2 size, std::optional<bool> turn) {
    Design d = empty_design(18);
    d.parts.push_back(panel("shelf", size, {0, 0, 700}, kX, kY));
    d.contacts.push_back(meet("shelf", EdgeSide::bottom, "left wall"));
    d.contacts.push_back(meet("shelf", EdgeSide::left, "right wall"));
    Group group;
    group.name = "shelf";
    group.turn = turn;
    d.groups.push_back(group);
    return std::abs(fit_exactly(corner(92), d).groups[0].turn_deg) > 0.1;
  };
  CHECK(turned({400, 300}, {}));
  CHECK_FALSE(turned({200, 150}, {}));
  CHECK(turned({200, 150}, true));
  CHECK_FALSE(turned({400, 300}, false));
}

TEST_CASE("placement: tight to a copy by its own name, its contact by the part's", "[reference]") {
  for (const char* wish : {"post", "post 1"}) {
    CAPTURE(wish);
    Design d = empty_design(18);
    d.parts.push_back(panel("post", {100, 900}, {500, 100, 0}, kY, kZ));
    d.parts[0].repeat = Repeat{2, {0, 400, 0}};
    // Its back 7 mm off both posts' fronts; it rests on the line and nothing else holds it.
    d.parts.push_back(panel("rail", {600, 90}, {525, 50, 400}, kY, kZ));
    d.contacts.push_back(meet("rail", PieceFace::back, "post", Fitting::clear));
    d.contacts.back().gap = {5};
    d.groups = {tight("rail", {wish})};
    d.groups[0].turn = false;
    const FitAnswer f = fit_exactly(corner(90), d);
    CHECK_THAT(f.frames[2].at.x, WithinAbs(518 + 5, 1e-3));  // two posts, then the rail
  }
}

TEST_CASE("placement: parallel to a piece it turns as that piece did", "[reference]") {
  // The strip lies on the right wall of a corner of 92 degrees, the lid beside it meets nothing.
  const auto turns = [](const std::string& along) {
    Design d = empty_design(18);
    d.parts.push_back(panel("strip", {80, 900}, {0, 100, 700}, kX, kY));
    d.parts.push_back(panel("lid", {400, 900}, {82, 100, 700}, kX, kY));
    d.contacts.push_back(meet("strip", EdgeSide::left, "right wall"));
    d.groups = {tight("strip", {"right wall"}), tight("lid", {})};
    d.groups[1].parallel_to = along;
    const FitAnswer f = fit_exactly(corner(92), d);
    return std::pair{f.groups[0].turn_deg, f.groups[1].turn_deg};
  };
  CHECK_THAT(std::abs(turns("strip").first), WithinAbs(2, 1e-6));
  CHECK_THAT(turns("strip").second, WithinAbs(turns("strip").first, 1e-9));
  CHECK_THAT(turns("right wall").second, WithinAbs(turns("right wall").first, 1e-6));
  CHECK_THAT(turns("left wall").second, WithinAbs(0, 1e-9));
}

TEST_CASE("placement: what turns by itself turns about its middle, however it is drawn") {
  // The same lid, drawn from its one and from its other corner.
  std::vector<Vec3> corners;
  for (const bool turned : {false, true}) {
    Design d = empty_design(18);
    d.parts.push_back(turned ? panel("lid", {900, 300}, {1400, 700, 400}, {-1, 0, 0}, {0, -1, 0})
                             : panel("lid", {900, 300}, {500, 400, 400}, kX, kY));
    Group g;
    g.name = "lid";
    g.parallel_to = "right wall";
    d.groups.push_back(g);
    const FitAnswer f = fit_exactly(corner(93), d);
    CHECK_THAT(f.groups[0].turn_deg, WithinAbs(3, 1e-6));
    corners.push_back(f.frames[0].room_from_piece(turned ? Vec3{900, 300, 9} : Vec3{0, 0, 9}));
    const Vec3 middle = f.frames[0].room_from_piece({450, 150, 9});
    CHECK_THAT(middle.x, WithinAbs(950, 1e-6));
    CHECK_THAT(middle.y, WithinAbs(550, 1e-6));
  }
  CHECK_THAT(norm(corners[1] - corners[0]), WithinAbs(0, 1e-6));
}

TEST_CASE("placement: between walls that are not parallel the order of contacts does not matter") {
  Found c = corner(90);
  WallShape& across = c.room.walls[1];
  across.start = {0, 1200};
  across.along = {std::cos(rad(4)), std::sin(rad(4))};
  across.out = {std::sin(rad(4)), -std::cos(rad(4))};
  std::vector<Vec3> moves;
  for (const bool reversed : {false, true}) {
    Design d = empty_design(18);
    d.parts.push_back(panel("shelf", {1150, 200}, {800, 10, 400}, kY, {-1, 0, 0}));
    d.contacts.push_back(meet("shelf", EdgeSide::left, "left wall"));
    d.contacts.push_back(meet("shelf", EdgeSide::right, "right wall"));
    if (reversed) std::swap(d.contacts[0], d.contacts[1]);
    Group still;
    still.name = "shelf";
    still.turn = false;
    d.groups.push_back(still);
    moves.push_back(fit_exactly(c, d).groups[0].move);
  }
  CHECK(norm(moves[0]) > 1);
  CHECK_THAT(norm(moves[1] - moves[0]), WithinAbs(0, 1e-6));
}

TEST_CASE("placement: a board is met at its rim in the draws too, wherever the spots begin") {
  // The wall leans in: a rail along it and a panel square to it meet the top of the board first. In
  // the draws the floor lies up to 3 lower, and the board with it.
  Found c = corner(90, 0.02);
  add_board(c.survey.walls[0], 130, 15);
  std::vector<RoomShape> draws(30, c.room);
  for (std::size_t r = 0; r < draws.size(); ++r) draws[r].floor.offset = -0.1 * (r + 1.0);
  for (const bool turned : {false, true})
    for (const bool face : {false, true}) {
      INFO("drawn upside down " << turned << ", by its face " << face);
      const double far = face ? 60 : 300, up = 430;
      const Vec3 u = face ? kZ : kY, v = face ? kX : kZ, at{500, 40, 0};
      const Vec2 size = face ? Vec2{up, far} : Vec2{far, up};
      Design d = empty_design(18);
      d.parts.push_back(turned ? panel("piece", size, at + size.x * u + size.y * v, -u, -v)
                               : panel("piece", size, at, u, v));
      const EdgeSide side = turned ? EdgeSide::right : EdgeSide::left;
      d.contacts.push_back(meet("piece", face ? EdgeChoice{PieceFace::back} : side, "left wall"));
      d.groups.push_back(standing_still("piece"));
      d.groups[0].height_from = HeightFrom::level_line;
      const FitAnswer f = fit_in(c, d, draws);
      REQUIRE(f.frames_in_draws.size() == draws.size());
      for (std::size_t r = 0; r < draws.size(); ++r) {
        const double rim = 15 + 0.02 * (130 + draws[r].floor.offset);
        const Vec3 drawn = turned ? at + size.x * u + size.y * v : at;
        CHECK_THAT(f.frames_in_draws[r][0].at.y - (drawn.y - at.y), WithinAbs(rim, 0.1));
      }
    }
}

TEST_CASE("placement: a frame of one group stays square in a corner that is not", "[reference]") {
  // Tight to its main wall, the wedge at the other; nothing in it racks.
  Design d = empty_design(30);
  d.parts.push_back(panel("back rail", {600, 30}, {0, 0, 500}, kX, kY));
  d.parts.push_back(panel("front rail", {600, 30}, {0, 370, 500}, kX, kY));
  d.parts.push_back(panel("end rail", {30, 340}, {0, 30, 500}, kX, kY));
  for (Part& part : d.parts) part.group = "frame";
  d.contacts.push_back(meet("back rail", EdgeSide::bottom, "left wall"));
  d.contacts.push_back(meet("end rail", EdgeSide::left, "right wall", Fitting::filler));
  d.groups.push_back(tight("frame", {"left wall"}));
  const FitAnswer f = fit_exactly(corner(93), d);
  CHECK_THAT(f.contacts[0].gap.most, WithinAbs(0, 1e-3));
  for (int p : {1, 2}) {
    const Vec3 drawn = f.pieces[0].frame.piece_from_room(f.pieces[p].frame.at);
    CHECK(norm(f.frames[0].piece_from_room(f.frames[p].at) - drawn) < 1e-9);
    CHECK_THAT(dot(f.frames[0].u, f.frames[p].u), WithinAbs(1, 1e-12));
  }
}

TEST_CASE("gap: the line is of the worse shown face, and of both where both show", "[reference]") {
  // A panel along the left wall in a corner of 87 degrees: its back is 18 tan 3 nearer to the right
  // wall than its front, or the other way round; touching one, the other is open by that.
  for (ShowFace show : {ShowFace::front, ShowFace::back, ShowFace::both}) {
    Design d = empty_design(18);
    d.parts.push_back(panel("panel", {400, 600}, {0, 700, 100}, kX, kZ));
    d.parts[0].show = show;
    d.contacts.push_back(meet("panel", EdgeSide::left, "right wall"));
    Group group = standing_still("panel");
    group.parallel_to = "left wall";
    d.groups.push_back(group);
    const FitAnswer f = fit_exactly(corner(87), d);
    const ContactFit& c = f.contacts[0];
    CHECK_THAT(std::abs(c.front[0].gap - c.back[0].gap), WithinAbs(18 * std::tan(rad(3)), 1e-3));
    const double worse = std::max(c.front[0].gap, c.back[0].gap);
    const double wanted = show == ShowFace::front  ? c.front[0].gap
                          : show == ShowFace::back ? c.back[0].gap
                                                   : worse;
    CHECK_THAT(c.line[0].gap, WithinAbs(wanted, 1e-9));
    CHECK_THAT(c.line.front().at, WithinAbs(0, 1e-9));   // v from the bottom
    CHECK_THAT(c.line.back().at, WithinAbs(600, 1e-9));  // to the top
  }
}

TEST_CASE("gap: of an edge by number the line counts from its first point", "[reference]") {
  Design d = empty_design(18);
  d.parts.push_back(panel("deck", {600, 400}, {100, 0, 700}, kX, kY));
  d.contacts.push_back(meet("deck", EdgeRun{3, 0}, "left wall", Fitting::clear));
  d.contacts.push_back(meet("deck", EdgeRun{0, 0}, "left wall"));
  const FitAnswer f = fit_exactly(corner(90), d);
  CHECK_THAT(f.contacts[1].line.front().at, WithinAbs(0, 1e-9));
  CHECK_THAT(f.contacts[1].line.back().at, WithinAbs(600, 1e-9));
  // From point 3 down the left edge, 400, then along the bottom: its rays meet the wall from 400
  // on.
  CHECK_THAT(f.contacts[0].line.back().at, WithinAbs(1000, 1e-9));
}

TEST_CASE("gap: a face is looked at on a grid of at most 50 mm, its worst row is the line",
          "[reference]") {
  // The wall leans away: a ledger 90 high touches at its lower edge and is open at its upper one.
  Design d = empty_design(38);
  d.parts.push_back(panel("ledger", {730, 90}, {1000, 0, 700}, {-1, 0, 0}, kZ));
  d.contacts.push_back(meet("ledger", PieceFace::back, "left wall", Fitting::shim));
  const FitAnswer f = fit_exactly(corner(90, -0.02), d);
  const ContactFit& c = f.contacts[0];
  std::vector<double> us, vs;
  for (const FieldPoint& p : c.field) us.push_back(p.u), vs.push_back(p.v);
  for (std::vector<double>* at : {&us, &vs}) {
    std::sort(at->begin(), at->end());
    CHECK_THAT(at->front(), WithinAbs(0, 1e-9));
    for (std::size_t i = 0; i + 1 < at->size(); ++i) CHECK((*at)[i + 1] - (*at)[i] <= 50);
  }
  CHECK_THAT(us.back(), WithinAbs(730, 1e-9));
  CHECK_THAT(vs.back(), WithinAbs(90, 1e-9));
  for (const GapPoint& p : c.line) CHECK_THAT(p.gap, WithinAbs(0.02 * 90, 1e-3));
}

TEST_CASE("scribe: cut beforehand it is judged by what the cut leaves, in the room by the move",
          "[reference]") {
  // Walls that lean by up to .006 either way: a line cut for the adjusted wall, plumb, leaves up to
  // 6 mm; scribed in the room it leaves nothing.
  const Found c = corner(90);
  std::vector<RoomShape> draws(20, c.room);
  for (int i = 0; i < 20; ++i) draws[i].walls[0].lean = 0.0006 * (i - 9.5);
  for (bool shop : {false, true}) {
    Design d = two_panels();
    d.contacts[0].by = Fitting::scribe;
    d.contacts[0].shop = shop;
    const FitAnswer f = fit_in(c, d, draws);
    // 1/8 in is accepted: 1000 x lean of up to 3.175, the ten middle draws (.3 to 2.7).
    CHECK_THAT(f.contacts[0].chance, WithinAbs(shop ? 0.5 : 1, 1e-9));
  }
}

TEST_CASE("scribe: a move that would uncover an edge spoils it and is named", "[reference]") {
  // A front 430 wide covers the side's edge (400 to 418) by 12; scribed to a wall that leans by
  // .03 of 900 it would move 27 closer and uncover it.
  Design d = empty_design(18);
  d.parts.push_back(panel("front", {430, 900}, {800, 0, 0}, kY, kZ));
  d.parts.push_back(panel("side", {600, 900}, {800, 400, 0}, {-1, 0, 0}, kZ));
  d.contacts.push_back(meet("front", EdgeSide::left, "left wall", Fitting::scribe));
  d.groups = {standing_still("front"), standing_still("side")};
  Covered cover;
  cover.part = "side";
  cover.edge = EdgeSide::left;
  cover.edge_given = "left";
  cover.behind = "front";
  cover.margin = {10};
  d.covered.push_back(cover);
  const FitAnswer f = fit_exactly(corner(90, -0.03), d);
  CHECK_THAT(f.contacts[0].scribe_mm, WithinAbs(27, 0.01));
  REQUIRE(f.contacts[0].spoils.size() == 1);
  CHECK(f.contacts[0].spoils[0] == "side behind the front");
  CHECK_THAT(f.contacts[0].after.most, WithinAbs(27 - 2, 0.05));  // 12 less 10 is free
}

TEST_CASE("notch: through the whole thickness, deep enough on both faces", "[reference]") {
  // A panel along the left wall in a corner of 87 degrees: wall and board run alike, so on either
  // face the board comes over the edge by its thickness over cos 3 less what that face is open.
  Found c = corner(87);
  add_board(c.survey.walls[1], 100, 20);
  Design d = empty_design(18);
  d.parts.push_back(panel("panel", {400, 600}, {0, 700, 0}, kX, kZ));
  d.contacts.push_back(meet("panel", EdgeSide::left, "right wall"));
  d.contacts[0].notch = true;
  Group group = standing_still("panel");
  group.parallel_to = "left wall";
  d.groups.push_back(group);
  const FitAnswer f = fit_exactly(c, d);
  REQUIRE(f.notches.size() == 1);
  CHECK_THAT(f.notches[0].depth_mm, WithinAbs(20 / std::cos(rad(3)) + in / 8, 1e-2));
}

TEST_CASE("ceiling: met from below, and cannot be told without a reading", "[reference]") {
  Found c = corner(90);
  Design d = empty_design(18);
  d.parts.push_back(panel("panel", {400, 2380}, {800, 300, 0}, kY, kZ));
  d.contacts.push_back(meet("panel", EdgeSide::top, "ceiling", Fitting::clear));
  d.contacts[0].gap = {15};
  CHECK(fit_exactly(c, d).contacts[0].verdict == Verdict::cannot_tell);
  c.room.ceiling = LevelSurface{};
  for (double high : {2400.0, 2390.0}) {
    c.room.ceiling->offset = high;
    const FitAnswer f = fit_exactly(c, d);
    CHECK_THAT(f.contacts[0].gap.least, WithinAbs(high - 2380, 1e-6));
    CHECK((f.contacts[0].verdict == Verdict::fits) == (high - 2380 >= 15));
  }
}
