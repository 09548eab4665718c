// Quantiles against published values.
#include <catch2/catch.hpp>
#include <cmath>

#include "survey/adjustment.h"
#include "survey/quantiles.h"
#include "survey/room_report.h"
#include "survey_builder.h"

using namespace nook;
using nook::test::SurveyBuilder;

TEST_CASE("tau limits: Pope 1976, The statistics of residuals and the detection of outliers",
          "[reference]") {
  // From memory, recomputed; alpha .001 and .01; printed to three digits.
  const auto [freedom, strict, loose] = GENERATE(table<int, double, double>({{2, 1.414, 1.414},
                                                                             {3, 1.730, 1.715},
                                                                             {4, 1.982, 1.918},
                                                                             {5, 2.178, 2.051},
                                                                             {7, 2.447, 2.208},
                                                                             {10, 2.679, 2.324},
                                                                             {14, 2.845, 2.399}}));
  INFO("f = " << freedom);
  CHECK(tau_limit(0.001, freedom) == Approx(strict).margin(6e-4));
  CHECK(tau_limit(0.01, freedom) == Approx(loose).margin(1e-3));
  CHECK(tau_limit(0.001, freedom) <= std::sqrt(double(freedom)) + 1e-12);
}

TEST_CASE("tau: tells the limit of w where only the readings' scatter says what they are worth") {
  RoomReport report;
  report.dof = 7, report.chi2 = 7;
  CHECK(w_limit_by_scatter(report).value() == Approx(2.447).margin(6e-4));
  report.chi2 = 28;  // twice as rough as stated
  CHECK(w_limit_by_scatter(report).value() == Approx(2 * 2.447).margin(2e-3));
  report.dof = 4;
  CHECK_FALSE(w_limit_by_scatter(report).has_value());
}

TEST_CASE("Baarda 1968: limits of w and the least slip that is found", "[reference]") {
  // From memory; alpha .001, power .80.
  CHECK(w_limit() == Approx(3.29).margin(0.005));
  CHECK(normal_quantile(1 - 0.01 / 2) == Approx(2.58).margin(0.005));
  CHECK(noncentrality() == Approx(4.13).margin(0.005));
}

TEST_CASE("quantiles: printed tables", "[reference]") {
  // Abramowitz and Stegun 1964, tables 26.1, 26.8 and 26.10, from memory.
  CHECK(normal_quantile(0.975) == Approx(1.959963984540054).epsilon(1e-15));
  CHECK(normal_quantile(0.5) == 0);
  CHECK(normal_quantile(1e-10) == Approx(-6.361340902404056).epsilon(1e-13));
  CHECK(chi2_quantile(0.95, 1) == Approx(3.84146).margin(5e-6));
  CHECK(chi2_quantile(0.999, 1) == Approx(10.828).margin(5e-4));
  CHECK(chi2_quantile(0.95, 10) == Approx(18.3070).margin(5e-5));
  CHECK(chi2_quantile(0.999, 30) == Approx(59.703).margin(5e-4));
  CHECK(student_quantile(0.975, 1) == Approx(12.706).margin(5e-4));
  CHECK(student_quantile(0.975, 10) == Approx(2.228).margin(5e-4));
  CHECK(student_quantile(0.9995, 5) == Approx(6.869).margin(5e-4));
}

TEST_CASE("quantiles: tail and quantile are inverse", "[property]") {
  for (const int freedom : {1, 2, 7, 40, 500})
    for (const double chance : {0.01, 0.5, 0.95, 0.999})
      CHECK(chi2_tail(chi2_quantile(chance, freedom), freedom) ==
            Approx(1 - chance).epsilon(1e-10));
}

TEST_CASE("a rectangle with both diagonals: r = a^2/4d^2, b^2/4d^2, 1/4", "[reference]") {
  // Equal sigma, one degree of freedom: detected, not located (Guo 2015, Bol. Cienc. Geod.).
  const double a = 3000, b = 4000, d = 5000;
  SurveyBuilder net(std::vector<std::string>{});
  net.sd = millimetres(1);
  for (const char* name : {"A", "B", "C", "D"}) net.mark_named(name);
  net.span("A", "B", {a}).span("B", "C", {b}).span("C", "D", {a}).span("D", "A", {b});
  net.span("A", "C", {d}).span("B", "D", {d + 9});
  const RoomReport report = adjust(net.survey).report();
  REQUIRE(report.dof == 1);
  const double expected[] = {a * a, b * b, a * a, b * b, d * d, d * d};
  for (std::size_t i = 0; i < 6; ++i) {
    CHECK(report.readings[i].redundancy == Approx(expected[i] / (4 * d * d)).margin(2e-3));
    CHECK(*report.readings[i].w * *report.readings[i].w == Approx(report.chi2).epsilon(1e-6));
  }
}
