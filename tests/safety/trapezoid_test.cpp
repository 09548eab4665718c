// Regions cut into trapezoids.
#include "safety/trapezoid.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <random>

#include "solid/polygon.h"

namespace nook::safe {
namespace {

Polygon ring(Vec2 middle, double radius, int sides) {
  Polygon points;
  for (int k = 0; k < sides; ++k) {
    const double turn = 2 * std::numbers::pi * k / sides;
    points.push_back(middle + radius * Vec2{std::cos(turn), std::sin(turn)});
  }
  return points;
}

bool in_any(const std::vector<Polygon>& cells, Vec2 p) {
  return std::any_of(cells.begin(), cells.end(), [&](const Polygon& cell) {
    return contains({cell, {}}, p);
  });
}

}  // namespace

TEST_CASE("trapezoids: shoelace formula - their areas add up to the region's") {
  const Region region{{{0, 0}, {900, 0}, {1000, 400}, {500, 250}, {100, 700}},
                      {ring({300, 200}, 80, 64), ring({700, 150}, 40, 7)}};
  double sum = 0;
  for (const Polygon& cell : trapezoids_of(region)) {
    CHECK(signed_area(cell) >= 0);
    sum += signed_area(cell);
  }
  CHECK(sum == Approx(area({region})).epsilon(1e-12));
}

TEST_CASE("trapezoids: spots are in one of them exactly where they are in the region",
          "[property]") {
  const Region region{ring({0, 0}, 500, 11), {ring({100, 50}, 200, 64)}};
  const auto cells = trapezoids_of(region);
  std::mt19937 random(7);
  INFO("seed 7");
  std::uniform_real_distribution<double> spot(-600, 600);
  for (int i = 0; i < 2000; ++i) {
    const Vec2 p{spot(random), spot(random)};
    if (border_distance(region, p) < 1e-6) continue;
    CHECK(in_any(cells, p) == contains(region, p));
  }
}

}  // namespace nook::safe
