// Distances a screw keeps, and the sizes and depths that everything starts from.
#include "fasten/spacing.h"

#include <catch2/catch.hpp>

#include "fasten/bench.h"
#include "fasten/services.h"
#include "fasten/strength.h"
#include "fasten/stud_pattern.h"

using namespace nook;

TEST_CASE("spacing: NDS commentary C12.1.5.7 (from memory) - 2.5, 15 and 10 D", "[reference]") {
  Screw screw;
  screw.gauge = 10;
  const double d = inches(.19).mm;
  const Distances keeps = distances_for(screw);
  CHECK_THAT(keeps.edge, Catch::WithinAbs(2.5 * d, 1e-9));
  CHECK_THAT(keeps.stud_edge, Catch::WithinAbs(2.5 * d, 1e-9));
  CHECK_THAT(keeps.end, Catch::WithinAbs(10 * d, 1e-9));
  CHECK_THAT(keeps.bored_from, Catch::WithinAbs(15 * d, 1e-9));
  CHECK_THAT(keeps.apart, Catch::WithinAbs(10 * d, 1e-9));
  CHECK_THAT(keeps.bored_apart, Catch::WithinAbs(15 * d, 1e-9));
  CHECK_THAT(keeps.least_hold, Catch::WithinAbs(6 * d, 1e-9));  // 12.1.5.6 (transcription)
}

TEST_CASE("spacing: NEC 300.4(A)(1), (D) - deeper than 1-1/4 in may reach a cable", "[reference]") {
  CHECK(kServiceDepth == inches(1.25).mm);
  const std::vector<ServiceZone> zones = {{{0, 0}, {100, 2000}, true, "a cable"}};
  REQUIRE(service_at(zones, {50, 900}, inches(1.25).mm));
  CHECK_FALSE(service_at(zones, {50, 900}, inches(1.25).mm)->forbidden);
  CHECK(service_at(zones, {50, 900}, inches(1.25).mm + .01)->forbidden);
  CHECK_FALSE(service_at(zones, {150, 900}, 40));
}

TEST_CASE("spacing: PS 20 and NDS 2018 table 12.3.3A (transcription) - a 2x4 of spruce-pine-fir",
          "[reference]") {
  const Studs studs;
  CHECK_THAT(in_inches(studs.width), Catch::WithinAbs(1.5, 1e-12));
  CHECK_THAT(in_inches(studs.wood_depth().value()), Catch::WithinAbs(3.5, 1e-12));
  CHECK(kUsualGravity == .42);
}

TEST_CASE("spacing: IRC R602.3(5) - 16 and 24 in on center are what is looked for", "[reference]") {
  for (double spacing : {16.0, 24.0}) {
    std::vector<Measured> found;
    for (int i = 1; i <= 4; ++i) found.push_back({inches(i * spacing).mm, 1});
    const auto pattern = pattern_of(found, std::nullopt);
    REQUIRE(pattern);
    CHECK_THAT(in_inches(millimetres(pattern->spacing)), Catch::WithinAbs(spacing, .05));
  }
}

TEST_CASE("spacing: lag screws keep the distances of larger dowels") {
  Screw lag;
  lag.kind = ScrewKind::lag;
  lag.diameter = inches(3.0 / 8);
  const Distances keeps = distances_for(lag);
  CHECK_THAT(keeps.edge, Catch::WithinAbs(inches(1.5).mm, 1e-9));
  CHECK_THAT(keeps.stud_edge, Catch::WithinAbs(inches(.5625).mm, 1e-9));
}

TEST_CASE("spacing: NDS 12.1.4.6, table L2 (7/16 from memory) - a lag holds 4 D and its own tip",
          "[reference]") {
  Screw lag;
  lag.kind = ScrewKind::lag;
  for (const auto& [size, tip] : {std::pair{1.0 / 4, 5.0 / 32},
                                  {3.0 / 8, 7.0 / 32},
                                  {7.0 / 16, 9.0 / 32},
                                  {1.0 / 2, 5.0 / 16}}) {
    lag.diameter = inches(size);
    CHECK_THAT(in_inches(millimetres(distances_for(lag).least_hold)),
               Catch::WithinAbs(4 * size + tip, 1e-9));
  }
}
