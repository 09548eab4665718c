// Outlines with fewer points stay where they were.
#include "solid/simplified.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "solid/polygon.h"

using namespace nook;

TEST_CASE("simplified: no point of the outline strays further than is said", "[property]") {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> rough(-1, 1);
  for (double stray : {0.0005, 0.1, 2.0}) {
    INFO("stray " << stray);
    Polygon ring;
    for (int i = 0; i < 400; ++i) {
      const double turn = 2 * std::acos(-1.0) * i / 400, r = 300 + 3 * stray * rough(random);
      ring.push_back({r * std::cos(turn), 0.7 * r * std::sin(turn)});
    }
    const Polygon kept = simplified(ring, stray);
    CHECK(kept.size() <= ring.size());
    for (Vec2 p : ring) CHECK(border_distance({kept, {}}, p) <= stray + 1e-9);
    for (Vec2 p : kept) CHECK(border_distance({ring, {}}, p) < 1e-9);
  }
}

TEST_CASE("simplified: points in line go, corners stay") {
  const Polygon ring{{0, 0}, {10, 0}, {20, 0.0004}, {30, 0}, {30, 20}, {30, 40}, {0, 40}, {0, 20}};
  const Polygon kept = simplified(ring, 0.0005);
  REQUIRE(kept.size() == 4);
  CHECK(norm(kept[1] - Vec2{30, 0}) == 0);
  CHECK(norm(kept[2] - Vec2{30, 40}) == 0);
}
