// The normal distribution function against printed quantiles, and what is known exactly.
#include "base/normal.h"

#include <catch2/catch.hpp>

#include "base/measured.h"

using namespace nook;

TEST_CASE("normal: the quantiles that the program prints and judges by", "[reference]") {
  // Any table of the normal distribution: 1.645 one-sided, 1.960 two-sided, 3.29 at .001.
  CHECK_THAT(normal_below(kOneSided95, 1), Catch::WithinAbs(.95, 1e-12));
  CHECK_THAT(normal_below(2 * kTwoSided95, 2), Catch::WithinAbs(.975, 1e-12));
  CHECK_THAT(2 * normal_below(-3.2905, 1), Catch::WithinAbs(.001, 1e-6));
  CHECK_THAT(normal_below(0, 5), Catch::WithinAbs(.5, 1e-15));
}

TEST_CASE("normal: what is known exactly is at its limit or past it") {
  CHECK(normal_below(0, 0) == 1);
  CHECK(normal_below(1e-9, 0) == 1);
  CHECK(normal_below(-1e-9, 0) == 0);
}
