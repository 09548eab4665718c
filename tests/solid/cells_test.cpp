// Convex cells fill their region once; grown outlines keep the clearance.
#include "solid/cells.h"

#include <catch2/catch.hpp>

#include "random_shapes.h"

using namespace nook;
using namespace nook::twin;
using Catch::WithinAbs;

namespace {

bool convex(const Polygon& ring) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2 a = ring[i], b = ring[(i + 1) % ring.size()], c = ring[(i + 2) % ring.size()];
    if (cross(b - a, c - b) < -1e-6) return false;
  }
  return true;
}

}  // namespace

TEST_CASE("convex cells: together have the region's area and no more", "[property]") {
  Random random(7);
  for (int kind = 0; kind < 200; ++kind) {
    INFO("case " << kind);
    const Region region = shape(random, kind);
    double sum = 0;
    for (const Polygon& cell : convex_cells(region)) {
      CHECK(convex(cell));
      CHECK(signed_area(cell) > 0);
      sum += signed_area(cell);
    }
    CHECK_THAT(sum, WithinAbs(area({region}), 1e-6));
  }
}

TEST_CASE("convex cells: a rectangle is one, a frame is few", "[reference]") {
  const Polygon square{{0, 0}, {10, 0}, {10, 10}, {0, 10}};
  CHECK(convex_cells({square, {}}).size() == 1);
  CHECK(convex_cells({square, {{{2, 2}, {2, 8}, {8, 8}, {8, 2}}}}).size() <= 6);
}

TEST_CASE("grown outline: never less than the clearance and at most 2 % more", "[property]") {
  Random random(8);
  for (int round = 0; round < 100; ++round) {
    const Polygon convex = hull_of(star(random, {0, 0}, 50, 9));
    const double clearance = even(random, 0.5, 20);
    const Polygon big = grown(convex, clearance);
    for (std::size_t i = 0; i < big.size(); ++i)
      for (double t : {0.0, 0.3, 0.5, 0.8}) {
        const Vec2 p = big[i] + t * (big[(i + 1) % big.size()] - big[i]);
        const double distance = border_distance({convex, {}}, p);
        CHECK(distance >= clearance - 1e-9);
        CHECK(distance <= 1.02 * clearance + 1e-9);
      }
  }
}

TEST_CASE("convex cells: a wave of ten thousand points, some of them in line", "[property]") {
  for (int n : {2000, 10000}) {
    INFO(n << " points");
    Region wave{{{0, 0}, {762, 0}}, {}};
    for (int i = 0; i <= n; ++i)  // rounded as typed, to 1/10,000 in
      wave.outline.push_back({std::round((30 - 30.0 * i / n) * 1e4) * 2.54e-3,
                              std::round((60 + 1.5 * std::sin(20.0 * i / n)) * 1e4) * 2.54e-3});
    const std::vector<Polygon> cells = convex_cells(wave);
    double total = 0;
    for (const Polygon& cell : cells) {
      CHECK(signed_area(cell) > 0);
      CHECK(std::abs(signed_area(cell) - signed_area(hull_of(cell))) < 1e-3);
      total += signed_area(cell);
    }
    CHECK(total == Approx(signed_area(wave.outline)).epsilon(1e-12));
    CHECK(static_cast<int>(cells.size()) < n / 2);
  }
}
