// What one look at a stud is worth, and what several say together.
#include "fasten/stud_belief.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace nook;

namespace {

constexpr double kWidth = 38.1;

StudLook nail(double at, int side, double z = 1000) {
  return {at, z, side, FoundBy::nail, {}};
}
StudLook finder(double at, int side, double z = 1000) {
  return {at, z, side, FoundBy::finder, {}};
}

// Student's t with 4 degrees of freedom, its published closed form (Abramowitz and Stegun 1964,
// 26.7.3): P(|t| < x) with theta = atan(x / 2) is sin (1 + cos^2 / 2) of theta.
double within_student4(double x) {
  const double s = x / std::sqrt(x * x + 4), c2 = 4 / (x * x + 4);
  return s * (1 + c2 / 2);
}

double chance_within(const StudBelief& belief, double at, double reach) {
  return belief.chance({1000, at, at}, belief.width() / 2 - reach, 0);
}

}  // namespace

TEST_CASE("stud belief: one finder centre follows Student's t, slips and doubled studs aside",
          "[reference]") {
  const StudBelief belief = believe({finder(500, 0)}, kWidth, 0);
  // 0.5 % are slips within about a foot; 8 and 2 % are doubled, tripled studs, whose middle ply or
  // seam is at the middle seen. Reaches under half a stud meet single and tripled studs only.
  for (double reach : {1.0, 3.0, 6.0, 9.0}) {
    const double expected = .92 * .995 * within_student4(reach / 3);
    INFO("reach " << reach);
    CHECK_THAT(chance_within(belief, 500, reach), Catch::WithinAbs(expected, .004));
  }
  CHECK_THAT(belief.sd(1000), Catch::WithinAbs(3 * std::sqrt(2.0), .1));
}

TEST_CASE("stud belief: two nailed edges are sure and halve their variance") {
  const StudBelief belief = believe({nail(480.95, -1), nail(519.05, 1)}, kWidth, 0);
  CHECK(belief.plies() == 1);
  CHECK_THAT(belief.centre(1000), Catch::WithinAbs(500, 1e-6));
  CHECK_THAT(belief.sd(1000), Catch::WithinAbs(1 / std::sqrt(2.0), 1e-3));
  CHECK(belief.chance({1000, 500, 500}, 12.065, 1) > .999);
  CHECK(belief.chance({1000, 519, 519}, 12.065, 1) < .001);
}

TEST_CASE("stud belief: exact edges give an exact centre") {
  StudLook left = nail(480.95, -1), right = nail(519.05, 1);
  left.sd = right.sd = .0001;
  const StudBelief belief = believe({left, right}, kWidth, 3e-3);
  CHECK_THAT(belief.centre(1000), Catch::WithinAbs(500, 1e-4));
  CHECK(belief.sd(1000) < 1e-3);
}

TEST_CASE("stud belief: edges two widths apart are a doubled stud, its seam no place") {
  const StudBelief belief = believe({nail(450, -1), nail(526.2, 1)}, kWidth, 0);
  CHECK(belief.plies() == 2);
  CHECK_THAT(belief.centre(1000), Catch::WithinAbs(488.1, .01));
  CHECK_THAT(belief.ply(0, 1000), Catch::WithinAbs(469.05, .01));
  CHECK_THAT(belief.ply(999, 1000), Catch::WithinAbs(507.15, .01));
  CHECK(belief.chance({1000, 469, 469}, 12.065, 1) > .999);
  CHECK(belief.chance({1000, 488.1, 488.1}, 12.065, 1) < .01);
}

TEST_CASE("stud belief: edges that cannot both be right leave two places, neither sure") {
  const StudBelief belief = believe({nail(480.95, -1), nail(540, 1)}, kWidth, 0);
  const double left = chance_within(belief, 500, 7), right = chance_within(belief, 520.95, 7);
  CHECK(left > .3);
  CHECK(right > .3);
  CHECK(left + right < 1.01);
  const double middle = belief.centre(1000);
  CHECK(std::min(std::abs(middle - 500), std::abs(middle - 520.95)) < 1);
}

TEST_CASE("stud belief: two heights show a lean, one height leaves it open") {
  const StudBelief leaning = believe(
      {nail(480.95, -1, 300), nail(519.05, 1, 300), nail(486.95, -1, 1500), nail(525.05, 1, 1500)},
      kWidth, 3e-3);
  CHECK_THAT(leaning.lean() * 1200, Catch::WithinAbs(6, .5));
  CHECK_THAT(leaning.centre(900), Catch::WithinAbs(503, .05));
  const StudBelief once = believe({nail(480.95, -1), nail(519.05, 1)}, kWidth, 3e-3);
  CHECK_THAT(once.sd(2000), Catch::WithinAbs(std::hypot(std::sqrt(.5), 3), .01));
}

TEST_CASE("stud belief: the order of looks changes nothing", "[property]") {
  const std::vector<StudLook> looks = {finder(482, -1, 900), nail(519.5, 1, 1000),
                                       finder(501, 0, 950)};
  const StudBelief a = believe(looks, kWidth, 3e-3);
  const StudBelief b = believe({looks[2], looks[0], looks[1]}, kWidth, 3e-3);
  CHECK(a.centre(1100) == b.centre(1100));
  CHECK(a.chance({1100, 500, 500}, 12, 1) == b.chance({1100, 500, 500}, 12, 1));
}

TEST_CASE("stud belief: the posterior agrees with a dense grid over place and lean", "[property]") {
  // The slow route: prior times likelihood on a grid, Student's density itself instead of its sum
  // of Gaussians; single studs only, so the chances are compared as odds of two reaches.
  const double e1 = 482.0, e2 = 518.0, h = 700, z = 1000, lean_sd = 3e-3;
  const auto t4 = [](double x, double scale) {
    return std::pow(1 + x * x / (4 * scale * scale), -2.5);
  };
  const auto look = [&](double x) {
    return .995 * t4(x, 2) * (3.0 / 8) / 2 +
           .005 * std::exp(-x * x / 2e4) / (100 * std::sqrt(2 * M_PI));
  };
  const auto mass = [&](double reach) {
    double sum = 0;
    for (double l = -4 * lean_sd; l <= 4 * lean_sd; l += lean_sd / 10)
      for (double c = 500 - reach; c <= 500 + reach; c += .05) {
        const double at_h = c + l * (h - z);
        sum += look(e1 - (at_h - kWidth / 2)) * look(e2 - (at_h + kWidth / 2)) *
               std::exp(-l * l / (2 * lean_sd * lean_sd));
      }
    return sum;
  };
  const StudBelief belief = believe({finder(e1, -1, h), finder(e2, 1, h)}, kWidth, lean_sd);
  const auto chance = [&](double reach) {
    return belief.chance({z, 500, 500}, kWidth / 2 - reach, 1e-3);
  };
  for (double reach : {1.0, 2.0, 4.0, 7.0})
    CHECK_THAT(chance(reach) / chance(9), Catch::WithinAbs(mass(reach) / mass(9), .004));
}
