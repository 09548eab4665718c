// Draws: what nobody can see of a room spreads nothing, what is not known of it does.
#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

#include "fit/body.h"
#include "fit/rooms_by_hand.h"
#include "fit/tally.h"
#include "solid/distance.h"

using namespace nook;
using namespace nook::by_hand;
using Catch::WithinAbs;

namespace {

// Rooms like `c` whose walls lean otherwise, in pairs either way.
std::vector<RoomShape> leaning_draws(const Found& c, double lean_left, double lean_right) {
  std::vector<RoomShape> draws;
  for (int i = 1; i <= 20; ++i)
    for (double way : {1.0, -1.0}) {
      RoomShape room = c.room;
      room.walls[0].lean += way * lean_left * i / 20;
      room.walls[1].lean += way * lean_right * i / 20;
      draws.push_back(room);
    }
  return draws;
}

// A ledger on the left wall, 50 mm short of the right one at its own height.
Design short_ledger(double gap) {
  Design d = empty_design(30);
  d.parts.push_back(panel("ledger", {900, 80}, {950, 0, 1000}, {-1, 0, 0}, kZ));
  d.contacts.push_back(meet("ledger", PieceFace::back, "left wall", Fitting::shim));
  d.contacts.push_back(meet("ledger", EdgeSide::right, "right wall", Fitting::clear));
  d.contacts[1].gap = millimetres(gap);
  return d;
}

// Rooms like `c` whose left wall is turned and leans, and whose right wall leans.
std::vector<RoomShape> turned_draws(const Found& c) {
  std::vector<RoomShape> draws(200, c.room);
  std::mt19937 random(7);
  const auto about = [&](double most) {
    return std::uniform_real_distribution<double>(-most, most)(random);
  };
  for (RoomShape& room : draws) {
    const double turn = about(0.006);
    room.walls[0].along = {std::cos(turn), std::sin(turn)};
    room.walls[0].out = {-std::sin(turn), std::cos(turn)};
    room.walls[0].lean = about(0.006);
    room.walls[1].lean = about(0.01);
  }
  return draws;
}

Mesh standing(const FitAnswer& f, int piece, const Frame& frame) {
  const Body body = body_of(f.pieces[piece]);
  Mesh mesh = prism(body.cells, body.thickness);
  for (Triangle& t : mesh)
    for (Vec3& corner : t) corner = frame.room_from_piece(corner);
  return mesh;
}

// Between pieces 0 and 1 in every draw.
Tally distances(const FitAnswer& f, double adjusted) {
  Tally all{adjusted, {}};
  for (const auto& frames : f.frames_in_draws)
    all.drawn.push_back(distance(standing(f, 0, frames[0]), standing(f, 1, frames[1])));
  return all;
}

}  // namespace

TEST_CASE("clearance: its give or take is that of the solids in the draws", "[property]") {
  const Found c = corner(90);
  const auto draws = turned_draws(c);
  // A post in front of a long shelf, one beside its end, two through a hole in it.
  for (const Vec2 at : {Vec2{1100, 290}, Vec2{270, 200}, Vec2{700, 150}, Vec2{703, 151}}) {
    INFO("post at " << at.x << ", " << at.y);
    Design d = empty_design(20);
    d.parts.push_back(panel("shelf", {1000, 260}, {300, 0, 900}, kX, kY));
    Cutout hole;
    hole.outline = {{390, 120}, {430, 120}, {430, 160}, {390, 160}};
    d.parts[0].cutouts.push_back(hole);
    d.contacts.push_back(meet("shelf", EdgeSide::bottom, "left wall"));
    d.parts.push_back(panel("post", {20, 2000}, {at.x, at.y, 0}, kX, kZ));
    const FitAnswer f = fit({c.survey, d, c.room, draws, 0.95, true});
    const auto between = std::find_if(f.clearances.begin(), f.clearances.end(), [](const auto& k) {
      return k.part == "shelf" && k.from == "post";
    });
    REQUIRE(between != f.clearances.end());
    const double slow = distances(f, between->least_mm).sd();
    CHECK(slow > 0.5);
    CHECK_THAT(between->sd_mm, WithinAbs(slow, 0.05 * slow));
  }
}

TEST_CASE("draws: a piece is laid off from the real corner at its height, not from base lines") {
  const Found c = corner(90);
  const Design d = short_ledger(45);
  const auto draws = leaning_draws(c, 0, 0.01);  // the corner moves 10 mm at 1 m up
  const FitAnswer f = fit({c.survey, d, c.room, draws, 0.95, true});
  CHECK_THAT(f.contacts[1].gap.least, WithinAbs(50, 1e-6));
  CHECK(f.contacts[1].gap_sd < 0.5);  // what is left: the ledger is 80 mm high
  CHECK(f.verdict == Verdict::fits);
}

TEST_CASE("draws: between an upright and a leaning piece the spread stays") {
  const Found c = corner(90);
  Design d = short_ledger(45);
  d.parts.push_back(panel("post", {60, 60}, {1000, 300, 0}, kX, kY));  // low down: 30 mm up
  d.contacts.push_back(meet("ledger", EdgeSide::left, "post", Fitting::clear));
  d.contacts.back().gap = millimetres(1);
  const auto draws = leaning_draws(c, 0, 0.01);
  const FitAnswer f = fit({c.survey, d, c.room, draws, 0.95, true});
  const double apart = f.frames_in_draws[0][0].at.x - f.frames_in_draws[1][0].at.x;
  CHECK_THAT(std::abs(apart), WithinAbs(2 * 0.0005 * 1040, 0.01));  // the first pair of draws
  const double low = f.frames_in_draws[0][1].at.x - f.frames_in_draws[1][1].at.x;
  CHECK(std::abs(low) < 0.05);
}

TEST_CASE("clear: the contact and the clearance tell one distance, with a tolerance of 1/64 in") {
  const Found c = corner(90);
  for (double lacks : {0.3, 0.5}) {
    INFO("lacks " << lacks << " mm");
    const FitAnswer f = fit_exactly(c, short_ledger(50 + lacks));
    const Verdict wanted = lacks < in / 64 ? Verdict::fits : Verdict::does_not_fit;
    CHECK(f.contacts[1].verdict == wanted);
    REQUIRE(f.clearances.size() >= 1);
    CHECK_THAT(f.clearances[0].least_mm, WithinAbs(50, 1e-6));
    CHECK(f.clearances[0].verdict == wanted);
  }
}
