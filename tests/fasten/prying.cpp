// A pull beside the screws: prying about the side that bears, stiff sharing between the studs.
#include "fasten/prying.h"

#include <catch2/catch.hpp>
#include <random>

#include "fasten/bench.h"
#include "fasten/load_share.h"
#include "fasten/said.h"

using namespace nook;

namespace {

Polygon rectangle(double length, double height) {
  return {{0, 0}, {length, 0}, {length, height}, {0, height}};
}

// A cleat of 8 in by 3 with two screws in one stud behind its middle, 4 in from either end.
Bench cleat(double pull_lb, std::optional<double> at) {
  Bench bench;
  bench.nailed(0, 15 + 5.0 / 16);
  bench.ledger(0, "cleat", {11 + 5.0 / 16, 8}, 37);
  Fastening& f = bench.screws("cleat", "left wall");
  f.pull_n = pull_lb * kNewtonsPerPound;
  if (at) f.load_at = inches(*at);
  return bench;
}

Strength only(const Bench& bench) {
  const DrillAnswer answer = bench.drilled();
  REQUIRE(answer.strength.size() == 1);
  return answer.strength[0];
}

// The least of a convex function, by thirds.
template <class F>
double least_by_thirds(const F& of) {
  double low = -2000, high = 2000;
  for (int i = 0; i < 120; ++i) {
    const double a = low + (high - low) / 3, b = high - (high - low) / 3;
    (of(a) < of(b) ? high : low) = of(a) < of(b) ? b : a;
  }
  return (low + high) / 2;
}

// The slow twin: strain energy less the work of the pull, least over both slopes of the piece, with
// the best lift that keeps every corner out.
struct SlowPiece {
  const std::vector<Vec2>& at;
  const PullAway& pull;

  double lift(Vec2 slope) const {
    double free = pull.newtons, out = -1e9;
    for (Vec2 s : at) free -= dot(slope, s);
    for (Vec2 p : pull.bearing) out = std::max(out, -dot(slope, p));
    return std::max(out, free / static_cast<double>(at.size()));
  }
  double energy(Vec2 slope) const {
    double sum = -pull.newtons * (lift(slope) + dot(slope, pull.at));
    for (Vec2 s : at) sum += std::pow(lift(slope) + dot(slope, s), 2) / 2;
    return sum;
  }
  double best_y(double x) const {
    return least_by_thirds([&](double y) { return energy({x, y}); });
  }
  std::vector<double> shares() const {
    const double x = least_by_thirds([&](double t) { return energy({t, best_y(t)}); });
    const Vec2 slope{x, best_y(x)};
    std::vector<double> found;
    for (Vec2 s : at) found.push_back(lift(slope) + dot(slope, s));
    return found;
  }
};

}  // namespace

TEST_CASE("prying: a pull at the end of a cleat with its screws in one stud doubles") {
  // By hand: the far end bears, 4 in from the screws and 7.9 in from the pull of 60 lb, so both
  // screws together carry 60 x 7.9 / 4 = 118.5 lb. In the middle they carry 60.
  const Strength middle = only(cleat(60, 4)), end = only(cleat(60, 7.9));
  CHECK_THAT(middle.worst_load_n / kNewtonsPerPound, Catch::WithinAbs(30, .3));
  CHECK_THAT(end.worst_load_n / kNewtonsPerPound, Catch::WithinAbs(59.25, .6));
  CHECK(*end.capacity_n < .52 * *middle.capacity_n);
  REQUIRE_FALSE(end.notes.empty());
  bool told = false;
  for (const std::string& note : end.notes)
    told |= note.find("pack it there") != std::string::npos &&
            note.find("bears on the wall 19 5/16\" from the corner") != std::string::npos;
  CHECK(told);
}

TEST_CASE("prying: one screw near the top edge is pried about that edge") {
  // By hand: the pull of 20 lb stands in the middle of the height, 1 1/2 in from the top edge, the
  // screw e from it: the edge bears, 20 x 1.5 / e.
  Bench bench = cleat(20, 4);
  bench.design.fastenings[0].per_stud = 1;
  Cutout below;  // leaves no room for it but near the top
  for (Vec2 p : {Vec2{2, .2}, Vec2{6, .2}, Vec2{6, 1.8}, Vec2{2, 1.8}})
    below.outline.push_back(kMillimetresPerInch * p);
  bench.design.parts[0].cutouts.push_back(below);
  const DrillAnswer answer = bench.drilled();
  REQUIRE(answer.walls[0].holes.size() == 1);
  const double e = answer.walls[0].holes[0].from_edge_mm / inches(1).mm;
  REQUIRE(e < 1);
  CHECK_THAT(answer.strength[0].worst_load_n / kNewtonsPerPound,
             Catch::WithinAbs(20 * 1.5 / e, 1e-6));
}

TEST_CASE("prying: between two studs a pull is shared as by a stiff beam") {
  // 1 to 2 between screws 300 mm apart, 100 from the first: 2/3 and 1/3 of 90 N.
  const PullAway pull{90, {200, 30}, rectangle(500, 60)};
  const Pried p = pried({{100, 30}, {400, 30}}, pull);
  REQUIRE(p.newtons.size() == 2);
  CHECK_THAT(p.newtons[0], Catch::WithinAbs(60, 1e-9));
  CHECK_THAT(p.newtons[1], Catch::WithinAbs(30, 1e-9));
}

TEST_CASE("prying: past the last stud the wall presses where a free beam would go in") {
  // Free: 100 (1/2 + 450 x 150 / 45,000) = 200 and -100 N; the wall takes the push instead, at the
  // end 100 mm beyond the first: 100 x 700 / (100^2 + 400^2) x (100, 400) = 41 and 165 N.
  const PullAway pull{100, {700, 30}, rectangle(800, 60)};
  const Pried p = pried({{100, 30}, {400, 30}}, pull);
  REQUIRE(p.newtons.size() == 2);
  CHECK_THAT(p.newtons[0], Catch::WithinAbs(700.0 / 17, 1e-9));
  CHECK_THAT(p.newtons[1], Catch::WithinAbs(2800.0 / 17, 1e-9));
  REQUIRE(p.bears_at);
  CHECK(p.bears_at->x == 0);
}

TEST_CASE("prying: where nothing bears it is the beam that carries loads down", "[property]") {
  const std::vector<Vec2> at = {{100, 10}, {100, 50}, {510, 10}, {510, 50}, {920, 10}, {920, 50}};
  const PullAway pull{300, {600, 30}, rectangle(1000, 60)};
  const Pried p = pried(at, pull);
  const auto beam = shares(at, pull.newtons, pull.at.x);
  REQUIRE(p.newtons.size() == at.size());
  for (std::size_t i = 0; i < at.size(); ++i)
    CHECK_THAT(p.newtons[i], Catch::WithinAbs(beam[i].down, 1e-9));
}

TEST_CASE("prying: a search for the least energy finds the same shares", "[property]") {
  std::mt19937 random(20260);
  std::uniform_real_distribution<double> x(5, 195), y(5, 55), out(-20, 260);
  for (int trial = 0; trial < 12; ++trial) {
    std::vector<Vec2> at;
    for (int i = 0; i <= trial % 4; ++i) at.push_back({x(random), y(random)});
    if (trial % 3 == 0)
      for (Vec2& p : at) p.x = at[0].x;  // one stud
    const PullAway pull{50, {out(random), y(random)}, rectangle(200, 60)};
    const Pried p = pried(at, pull);
    const auto slow = SlowPiece{at, pull}.shares();
    CAPTURE(trial, at.size(), pull.at.x, pull.at.y);
    REQUIRE(p.newtons.size() == at.size());
    for (std::size_t i = 0; i < at.size(); ++i)
      CHECK_THAT(p.newtons[i], Catch::WithinAbs(slow[i], .002 * pull.newtons));
  }
}

TEST_CASE("prying: screws and bearing balance the pull, and no screw pushes", "[property]") {
  std::mt19937 random(8);
  std::uniform_real_distribution<double> x(5, 195), y(5, 55);
  for (int trial = 0; trial < 200; ++trial) {
    const std::vector<Vec2> at = {{x(random), y(random)}, {x(random), y(random)}};
    const PullAway pull{10, {x(random), y(random)}, rectangle(200, 60)};
    const Pried p = pried(at, pull);
    REQUIRE(p.newtons.size() == 2);
    const double sum = p.newtons[0] + p.newtons[1], press = sum - pull.newtons;
    CHECK(std::min(p.newtons[0], p.newtons[1]) >= 0);
    CHECK(press >= -1e-6);
    if (press < 1e-3) continue;  // what presses then stands on the outline
    const Vec2 where =
        (1 / press) * (p.newtons[0] * at[0] + p.newtons[1] * at[1] + -(pull.newtons * pull.at));
    CHECK(border_distance({pull.bearing, {}}, where) < 1e-3);
  }
}

TEST_CASE("prying: a joint is pried where its pull stands beside the screws") {
  // Two screws in an overlap of 6 in by 3.
  Bench bench;
  bench.ledger(0, "post", {10, 6}, 37);
  Part& arm = bench.ledger(0, "arm", {10, 30}, 37);
  arm.place_in_room.at.y = inches(1.25).mm;
  Fastening& f = bench.screws("arm", "post");
  f.screw.length = inches(2.45);
  f.face = PieceFace::back;
  f.pull_n = 10 * kNewtonsPerPound;
  const auto distances = [&] {
    std::vector<double> from_far;  // of the screws from the arm's right end, in
    for (const Hole& h : bench.drilled().parts.at(0).holes)
      from_far.push_back(30 - h.u_mm / inches(1).mm);
    REQUIRE(from_far.size() == 2);
    return from_far;
  };
  const auto d = distances();
  const double near = std::min(d[0], d[1]), far = std::max(d[0], d[1]);
  // Spread: in the middle of what meets, 3 in from the far end, between the screws.
  REQUIRE((near < 3 && far > 3));
  CHECK_THAT(only(bench).worst_load_n / kNewtonsPerPound,
             Catch::WithinAbs(10 * std::max(3 - near, far - 3) / (far - near), 1e-6));
  // At u = 1 in, 29 in from the end that bears: 10 x 29 d / (d1^2 + d2^2).
  bench.design.fastenings[0].load_at = inches(1);
  CHECK_THAT(only(bench).worst_load_n / kNewtonsPerPound,
             Catch::WithinAbs(10 * 29 * far / (near * near + far * far), 1e-6));
}

TEST_CASE("joints: a load that presses is not counted on against a pull") {
  // The load may be gone when the pull comes: 200 N of pull on four screws, 50 each, load or not.
  Bench bench;
  bench.ledger(0, "ledger", {0, 46}, 37);
  Part& deck = bench.ledger(0, "deck", {0, 46}, 40);
  deck.place_in_room = {{0, 0, inches(40).mm}, {1, 0, 0}, {0, 1, 0}, {}, {}};
  Fastening& f = bench.screws("deck", "ledger");
  f.screw.length = inches(2.5);
  f.pull_n = 200;
  const double alone = only(bench).worst_load_n;
  CHECK(alone > 49);
  bench.design.fastenings[0].load_n = 1000;
  CHECK_THAT(only(bench).worst_load_n, Catch::WithinAbs(alone, 1e-9));
}
