// What a tape may err, against the published table.
#include <catch2/catch.hpp>
#include <cmath>

#include "base/length.h"
#include "survey/worth.h"

using namespace nook;

TEST_CASE("tape: EU 2014/32 annex MI-008 (OIML R 35-1) - greatest permitted error", "[reference]") {
  // 0.1 + 0.1 L, 0.3 + 0.2 L, 0.6 + 0.4 L mm, L in metres rounded up; printed to 0.1 mm.
  const auto [accuracy, metres, error] =
      GENERATE(table<TapeClass, double, double>({{TapeClass::II, 3.00, 0.9},
                                                 {TapeClass::II, 3.05, 1.1},
                                                 {TapeClass::I, 10, 1.1},
                                                 {TapeClass::II, 10, 2.3},
                                                 {TapeClass::III, 10, 4.6}}));
  INFO("class " << static_cast<int>(accuracy) + 1 << ", " << metres << " m");
  CHECK(permitted_error(accuracy, metres * 1000) == Approx(error).margin(1e-9));
}

TEST_CASE("tape: NIST Handbook 44 (transcription) - class II is near the steel tape's tolerance",
          "[reference]") {
  // 1/32 in to 6 ft, 1/16 in from 7 to 30 ft: a class II tape may err within 0.4 mm of that.
  CHECK(permitted_error(TapeClass::II, inches(72).mm) == Approx(inches(1.0 / 32).mm).margin(0.4));
  CHECK(permitted_error(TapeClass::II, inches(20 * 12).mm) ==
        Approx(inches(1.0 / 16).mm).margin(0.4));
}

TEST_CASE("tape: geometry, y^2 / 2x - 4 in off line over 120 in reads 0.067 in long",
          "[reference]") {
  Survey survey;
  const double long_by = std::hypot(120.0, 4.0) - 120;
  CHECK(long_by == Approx(0.067).margin(0.0005));
  // More than what one reading is worth at marks: off line is a slip, not an error of reading.
  Reading reading;
  reading.value = inches(120);
  CHECK(inches(long_by).mm > worth(survey, reading, Ends::marks).sd);
}
