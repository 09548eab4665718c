// Yield modes against the published example, all modes and gaps.
#include "fasten/yield.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "fasten/reference_table.h"

using namespace nook;

namespace {

Shear example(double side_strength, double gap) {
  return {.5, 4800, side_strength, 1.5, 1.5, gap, 937.5};
}

void compare(const std::string& file, double side_strength, const Reduction& reduction) {
  for (const TableRow& row : reference_table(file)) {
    INFO(file << ", gap " << row[0]);
    const auto all = yields(example(side_strength, std::stod(row[0])), reduction);
    for (int mode = 0; mode < 6; ++mode) {
      INFO("mode " << all[mode].mode);
      CHECK_THAT(all[mode].pounds, Catch::WithinAbs(std::stod(row[mode + 1]), .5));
    }
  }
}

}  // namespace

TEST_CASE("yield modes: TR12-2015 example 3.1 - both members along the grain", "[reference]") {
  compare("tr12-2015/along.txt", 4800, {4, 3.6, 3.2});
}

TEST_CASE("yield modes: TR12-2015 example 3.1 - side member across the grain", "[reference]") {
  compare("tr12-2015/across.txt", 2550, {5, 4.5, 4});
}

TEST_CASE("yield modes: the least one governs") {
  const Yield least = least_yield(example(4800, .25), {4, 3.6, 3.2});
  CHECK(least.mode == "II");
  CHECK_THAT(least.pounds, Catch::WithinAbs(370, .5));
}

TEST_CASE("yield modes: each root satisfies the equilibrium it came from", "[property]") {
  // Mode IV by hand: both hinges form, so P (g + x_s + x_m) = M_s + M_m + P^2/(2 q_s) ... solved
  // for P by bisection here instead of the quadratic formula.
  const Shear s = example(2550, .375);
  const double qm = s.main_strength * s.diameter, qs = s.side_strength * s.diameter;
  double low = 0, high = 1e5;
  for (int i = 0; i < 200; ++i) {
    const double p = (low + high) / 2;
    const double left = p * s.gap + p * p / (2 * qs) + p * p / (2 * qm);
    (left < 2 * s.moment ? low : high) = p;
  }
  CHECK_THAT(yields(s, {1, 1, 1})[5].pounds, Catch::WithinAbs(low, 1e-6));
}
