// Exact readings in flat rooms: the adjustment must be plain geometry.
#include <catch2/catch.hpp>
#include <cmath>

#include "survey/adjustment.h"
#include "survey_builder.h"

using namespace nook;
using nook::test::SurveyBuilder;

namespace {

SurveyBuilder exact() {
  SurveyBuilder b;
  b.survey.flatness.sd = millimetres(0);
  b.sd = millimetres(1e-4);
  return b;
}

double third_side(double a, double b, double angle) {
  return std::sqrt(a * a + b * b - 2 * a * b * std::cos(angle));
}

}  // namespace

TEST_CASE("exact readings: 3-4-5 is a right angle and foretells by the law of cosines",
          "[reference]") {
  SurveyBuilder b = exact();
  b.diagonal(0, 900, 1200, {1500}).diagonal(0, 600, 600, {600 * std::sqrt(2)});
  const Adjustment adjusted = adjust(b.survey);
  REQUIRE(adjusted.complete());
  CHECK(adjusted.report().corners[0].angle_deg.value == Approx(90).margin(1e-9));
  const auto foretold = adjusted.expected_diagonal(0, 1000, 700, 1000);
  REQUIRE(foretold);
  CHECK(foretold->value == Approx(third_side(1000, 700, degrees(90).rad)).margin(1e-9));
}

TEST_CASE("exact readings: any angle foretells by the law of cosines (Euclid II.12-13)",
          "[reference]") {
  for (const double angle : {60.0, 87.3, 91.4, 120.0}) {
    const double rad = degrees(angle).rad;
    SurveyBuilder b = exact();
    b.diagonal(0, 914.4, 1219.2, {third_side(914.4, 1219.2, rad)});
    b.diagonal(0, 1524, 1524, {third_side(1524, 1524, rad)});
    const Adjustment adjusted = adjust(b.survey);
    CHECK(adjusted.report().corners[0].angle_deg.value == Approx(angle).margin(1e-10));
    const auto foretold = adjusted.expected_diagonal(0, 700, 1800, 300);
    REQUIRE(foretold);
    CHECK(foretold->value == Approx(third_side(700, 1800, rad)).margin(1e-9));
  }
}
