// Openings, turns and tipping against published forms and against sweeps that solve nothing.
#include "shop/passage.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "base/length.h"
#include "passage_sweep.h"

using namespace nook;
using Catch::WithinAbs;

namespace {

double in(double x) {
  return x * kMillimetresPerInch;
}

}  // namespace

TEST_CASE("turn: the ladder round a corner - a thin panel obeys (a^2/3 + b^2/3)^3/2",
          "[reference]") {
  // The classical ladder problem; worked by hand for halls of 36 and 38: 104 5/8.
  const TurnSize hall{in(36), in(38), in(95)};
  CHECK_THAT(longest_thin(hall) / in(1), WithinAbs(104.64, 0.01));
  for (const double to : {500.0, 900.0, 1400.0}) {
    const TurnSize turn{800, to, 2400};
    CHECK_THAT(longest_round(turn, 0), WithinAbs(longest_thin(turn), 1e-6));
  }
}

TEST_CASE("turn: a thick box - agrees with laying it against both outer walls at every angle",
          "[property]") {
  const unsigned seed = 11;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> hall(700, 1500), width(0, 650);
  for (int i = 0; i < 40; ++i) {
    const TurnSize turn{hall(random), hall(random), 2400};
    const double w = width(random);
    const double swing = sweep::longest_swing(turn.from, turn.to, w);
    CHECK_THAT(longest_round(turn, w), WithinAbs(std::max({swing, turn.from, turn.to}), 1e-3));
  }
}

TEST_CASE("turn: a flood through places and angles - gets round where the closed form says so",
          "[property]") {
  const unsigned seed = 5;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> hall(36, 50), share(0.05, 0.95);
  for (int i = 0; i < 6; ++i) {
    const TurnSize turn{hall(random), hall(random), 95};
    const double q = share(random) * std::min(turn.from, turn.to);
    const double p = longest_round(turn, q);
    INFO("halls " << turn.from << " and " << turn.to << ", box " << p << " by " << q);
    // The grid moves in steps of an inch and 2 degrees: it needs some air, and sees no finer.
    if (0.85 * p > q && q < 0.85 * std::min(turn.from, turn.to))
      CHECK(sweep::gets_round(turn.from, turn.to, 0.85 * p, 0.95 * q));
    CHECK_FALSE(sweep::gets_round(turn.from, turn.to, 1.02 * p, q));
  }
}

TEST_CASE("turn: too wide for a hall - is told by how much it is too wide") {
  CHECK(longest_round({900, 800, 2400}, 801) == 0);
  CHECK_THAT(turn_spare({900, 800, 2400}, 2000, 830), WithinAbs(-30, 1e-12));
}

TEST_CASE("turn: spare room is how much longer the box could be, or wider where that is less") {
  const TurnSize turn{900, 1000, 2400};
  const double longest = longest_round(turn, 20);
  CHECK_THAT(turn_spare(turn, 2000, 20), WithinAbs(longest - 2000, 1e-9));
  CHECK_THAT(turn_spare(turn, 950, 890), WithinAbs(10, 1e-9));
  CHECK_THAT(turn_spare(turn, 20, 2000), WithinAbs(turn_spare(turn, 2000, 20), 1e-12));
}

TEST_CASE("opening: a rectangle in a rectangle - agrees with every angle tried", "[property]") {
  const unsigned seed = 3;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> side(10, 100);
  int passing = 0;
  for (int i = 0; i < 400; ++i) {
    const double a = side(random), b = side(random), p = 1.3 * side(random), q = side(random) / 4;
    INFO(a << " by " << b << ", box " << p << " by " << q);
    const bool passes = passes_opening({a, b}, {p, q});
    passing += passes;
    // A hair of difference either way is left to the sweep's steps.
    if (passes) CHECK(sweep::lies_in_opening(a + 1e-3, b + 1e-3, p, q));
    if (!passes) CHECK_FALSE(sweep::lies_in_opening(a - 1e-3, b - 1e-3, p, q));
  }
  CHECK(passing > 50);
  CHECK(passing < 350);
}

TEST_CASE("opening: the widest through - just passes and no more", "[property]") {
  for (const double q : {0.0, 18.0, 60.0, 300.0}) {
    const double widest = widest_through({720, 2020}, q);
    CHECK(sweep::lies_in_opening(2020, 720, widest - 0.5, q));
    CHECK_FALSE(sweep::lies_in_opening(2020, 720, widest + 0.01, q));
  }
  CHECK(widest_through({720, 2020}, 721) == 0);
  CHECK_THAT(widest_through({300, 400}, 0), WithinAbs(500, 1e-9));  // the 3-4-5 diagonal
}

TEST_CASE("tipping up: sqrt(h^2 + t^2) is the height it takes", "[reference]") {
  // Geometry; 84 in by 23/32: 84.003.
  CHECK_THAT(tipping_height(in(84), in(23.0 / 32)) / in(1), WithinAbs(84.0031, 1e-4));
  CHECK(tipping_height(3, 4) == 5);
}

TEST_CASE("tipped: a 120 in stick raised to 94 is 74 9/16 long in plan", "[reference]") {
  // Worked by hand: sqrt(120^2 - 94^2) = 74.59.
  CHECK_THAT(tipped_length(in(120), 0, in(94)) / in(1), WithinAbs(74.59, 0.005));
}

TEST_CASE("tipped: a thick stick - no raise under the height makes it shorter", "[property]") {
  for (const double deep : {0.0, 40.0, 200.0})
    for (const double height : {600.0, 1500.0, 2300.0}) {
      const double plan = tipped_length(2400, deep, height);
      CHECK_THAT(plan, WithinAbs(sweep::shortest_raised(2400, deep, height), 0.05));
    }
}
