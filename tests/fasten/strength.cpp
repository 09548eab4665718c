// Loads against capacities: pull, both at once, duration, rated screws, what has no figure.
#include "fasten/strength.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "fasten/bench.h"

using namespace nook;

namespace {

Bench hung(double load_lb) {
  Bench bench;
  bench.nailed(0, 15.25);
  bench.nailed(0, 31.25);
  bench.ledger(0, "ledger", {8, 30}, 37);
  bench.screws("ledger", "left wall").load_n = load_lb * kNewtonsPerPound;
  return bench;
}

Strength only(const Bench& bench) {
  const DrillAnswer answer = bench.drilled();
  REQUIRE(answer.strength.size() == 1);
  return answer.strength[0];
}

bool notes(const Strength& s, const std::string& words) {
  for (const std::string& n : s.notes)
    if (n.find(words) != std::string::npos) return true;
  return false;
}

}  // namespace

TEST_CASE("strength: a spread load on studs alike is shared alike; capacity is load over ratio") {
  const Strength s = only(hung(200));
  REQUIRE((s.ratio && s.capacity_n));
  CHECK_THAT(s.screw_n / kNewtonsPerPound, Catch::WithinAbs(57, .5));  // TR12 mode IV, gap 1/2
  CHECK_THAT(*s.load_n / *s.capacity_n, Catch::WithinAbs(*s.ratio, 1e-9));
  CHECK(s.mode == "IV");
  CHECK(s.source.find("NDS 2018") != std::string::npos);
}

TEST_CASE("strength: NDS 2018 table 2.3.2 (transcription) - duration multiplies", "[reference]") {
  Bench bench = hung(200);
  const double normal = *only(bench).capacity_n;
  for (double factor : {.9, 1.15, 1.25, 1.6}) {
    bench.design.fastenings[0].duration = factor;
    CHECK_THAT(*only(bench).capacity_n, Catch::WithinAbs(factor * normal, 1e-6));
  }
}

TEST_CASE("strength: a pull alone is withdrawal of the thread in the stud", "[reference]") {
  Bench bench = hung(0);
  bench.design.fastenings[0].load_n.reset();
  bench.design.fastenings[0].pull_n = 100 * kNewtonsPerPound;
  const Strength s = only(bench);
  CHECK(s.mode == "withdrawal");
  // NDS 12.2.2.1: 2850 x .42^2 x .19 = 95.5 lb an inch, 1 1/4 in of it.
  CHECK_THAT(s.screw_n / kNewtonsPerPound, Catch::WithinAbs(95.52 * 1.25, .05));
}

TEST_CASE("strength: a load and a pull together by NDS 12.4.1", "[reference]") {
  Bench bench = hung(80);
  bench.design.fastenings[0].pull_n = 60 * kNewtonsPerPound;
  const Strength s = only(bench);
  CHECK(s.mode == "combined");
  const double w = 95.52 * 1.25, z = 57.03, c2 = .64, s2 = .36;
  CHECK_THAT(s.screw_n / kNewtonsPerPound, Catch::WithinAbs(w * z / (w * c2 + z * s2), .1));
  CHECK_THAT(*s.load_n / kNewtonsPerPound, Catch::WithinAbs(100, 1e-6));
}

TEST_CASE("strength: structural screws hold what their maker states, sideways only") {
  Bench bench = hung(200);
  Screw& screw = bench.design.fastenings[0].screw;
  screw.kind = ScrewKind::structural;
  screw.diameter = inches(.22);
  screw.allowable_n = 250 * kNewtonsPerPound;
  screw.allowable_source = "the maker's table, 2020, page 3";
  Strength s = only(bench);
  CHECK(s.mode == "maker's allowable");
  CHECK(s.source == screw.allowable_source);
  CHECK_THAT(s.screw_n, Catch::WithinAbs(250 * kNewtonsPerPound, 1e-9));
  bench.design.fastenings[0].pull_n = 10;
  CHECK_FALSE(only(bench).capacity_n);
  bench.design.fastenings[0].pull_n.reset();
  const Length length = screw.length;
  screw.length = inches(1.875);  // 1/8 in the stud
  CHECK_FALSE(only(bench).capacity_n);
  CHECK(only(bench).mode == "too short in the wood for its maker's allowable load");
  screw.length = length;
  screw.allowable_n.reset();
  CHECK_FALSE(only(bench).capacity_n);
}

TEST_CASE("strength: lag screws press a level ledger across its grain") {
  Bench bench = hung(200);
  Screw& screw = bench.design.fastenings[0].screw;
  screw.kind = ScrewKind::lag;
  screw.gauge = 0;
  screw.diameter = inches(.25);
  screw.length = inches(4);
  const Strength s = only(bench);
  REQUIRE(s.capacity_n);
  // By hand: Fem 11,200 x .42 = 4,700, Fes 6,100 x .42^1.45 / .5 = 3,450 (both rounded), root .173.
  Shear shear{.173, 4700, 3450, 4 - 1.25 - .5 - 5.0 / 64, 1.25, .5, 70e3 * std::pow(.173, 3) / 6};
  const double kd = (10 * .173 + .5) * 1.25;
  CHECK_THAT(s.screw_n / kNewtonsPerPound,
             Catch::WithinAbs(least_yield(shear, {kd, kd, kd}).pounds, .01));
}

TEST_CASE("strength: the wood taken where nothing is stated is said") {
  Bench bench = hung(100);
  CHECK(notes(only(bench), "spruce-pine-fir, G 0.42"));
  bench.survey.walls[0].studs->gravity = .5;
  const Strength s = only(bench);
  CHECK_FALSE(notes(s, "spruce-pine-fir"));
  CHECK(*s.capacity_n > *only(hung(100)).capacity_n);
}

TEST_CASE("strength: pocket and drywall screws, and screws of no listed size, have no figure") {
  Bench bench = hung(100);
  bench.design.fastenings[0].screw.kind = ScrewKind::drywall;
  CHECK_FALSE(only(bench).capacity_n);
  bench.design.fastenings[0].screw.kind = ScrewKind::wood;
  bench.design.fastenings[0].screw.gauge = 11;
  CHECK_FALSE(only(bench).capacity_n);
  CHECK(only(bench).mode.find("no published figure") != std::string::npos);
}

TEST_CASE("strength: without a load the capacity stands and nothing is judged") {
  Bench bench = hung(0);
  bench.design.fastenings[0].load_n.reset();
  const Strength s = only(bench);
  CHECK_FALSE(s.load_n);
  CHECK_FALSE(s.ratio);
  CHECK_THAT(*s.capacity_n, Catch::WithinAbs(4 * s.screw_n, 1e-9));
}

TEST_CASE("strength: no pull makes a screw carry more sideways", "[property]") {
  double before = 0;
  for (const double pull : {0.0, 5.0, 20.0, 60.0, 150.0, 400.0}) {
    Bench bench = hung(200);
    bench.design.fastenings[0].pull_n = pull * kNewtonsPerPound;
    const double ratio = *only(bench).ratio;
    CAPTURE(pull, before);
    CHECK(ratio >= before - 1e-9);
    before = ratio;
  }
}

TEST_CASE("strength: furring of unstated depth has no figure, and no 2x4 behind it") {
  Bench bench = hung(20);
  Studs& studs = *bench.survey.walls[0].studs;
  studs.kind = StudKind::furring;
  const Strength s = only(bench);
  CHECK_FALSE(s.capacity_n);
  CHECK(s.mode == "nothing says how thick the furring is");
  REQUIRE_FALSE(s.advice.empty());
  CHECK(s.advice.front().find("state it as `depth`") != std::string::npos);
  CHECK(bench.drilled().verdict == Verdict::cannot_tell);
  // 3/4 in of it: a screw of 3 in, 1 1/4 of it past board and rail, comes out behind.
  studs.depth = inches(.75);
  CHECK(bench.drilled().verdict == Verdict::does_not_fit);
  // One of 2 1/4 stays in it by 1/2 in, under 6 D = 1.14: no figure either.
  bench.design.fastenings[0].screw.length = inches(2.25);
  CHECK_FALSE(only(bench).capacity_n);
  // 2 in of it hold as a stud does.
  studs.depth = inches(2);
  bench.design.fastenings[0].screw.length = inches(3);
  CHECK(only(bench).capacity_n == only(hung(20)).capacity_n);
}
