// Distances to shadows against exact unions of the same shadows.
#include "safety/air.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "safety/grid.h"
#include "solid/boolean.h"

namespace nook::safe {
namespace {

Region box(Vec2 low, Vec2 size) {
  return {{low, {low.x + size.x, low.y}, low + size, {low.x, low.y + size.y}}, {}};
}

// A plate with a hole, and boards that cross it and each other.
std::vector<Shadow> scene() {
  Region plate = box({0, 0}, {900, 1200});
  plate.holes.push_back(box({200, 300}, {300, 500}).outline);
  std::vector<Shadow> shadows{{{Owner::Kind::piece, 0}, plate},
                              {{Owner::Kind::piece, 1}, box({-100, 560}, {1200, 20})},
                              {{Owner::Kind::piece, 2}, box({350, 200}, {30, 700})},
                              {{Owner::Kind::wall, 0}, box({-300, -100}, {250, 1500})}};
  shadows.push_back({{Owner::Kind::piece, 3}, {{{1000, 0}, {1300, 100}, {1100, 600}}, {}}});
  return shadows;
}

double exact_distance(const Regions& solid, Vec2 p) {
  double least = 1e9;
  for (const Region& region : solid) {
    if (contains(region, p)) return 0;
    least = std::min(least, border_distance(region, p));
  }
  return least;
}

}  // namespace

TEST_CASE("air: exact Booleans - the distance to all shadows is that to their union",
          "[property]") {
  const auto shadows = scene();
  Regions solid;
  for (const Shadow& shadow : shadows) solid = unite(solid, {shadow.region});
  const Air air(shadows);
  std::mt19937 random(11);
  INFO("seed 11");
  std::uniform_real_distribution<double> x(-400, 1500), y(-300, 1500);
  for (int i = 0; i < 3000; ++i) {
    const Vec2 p{x(random), y(random)};
    const double exact = air.nearest(p).distance;
    CHECK_THAT(exact, Catch::WithinAbs(exact_distance(solid, p), 2e-3));
    CHECK_THAT(air.nearest(p, exact + 1e-3).distance, Catch::WithinAbs(exact, 1e-4));
    if (exact > 0) CHECK(std::isinf(air.nearest(p, exact * 0.999).distance));
  }
}

TEST_CASE("air: only what is near - the same distances as all of it") {
  const Air air(scene());
  const Air close = air.near({300, 500}, 200);
  CHECK(close.shadows().size() < air.shadows().size());
  for (double x = 210; x < 500; x += 13)
    CHECK(close.nearest({x, 450}).distance == air.nearest({x, 450}).distance);
}

TEST_CASE("air: each owner once within reach, nearest first") {
  const auto touches = Air(scene()).within({275, 430}, 200);
  REQUIRE(touches.size() == 3);
  CHECK(touches[0].owner == Owner{Owner::Kind::piece, 0});
  CHECK(touches[0].distance == Approx(75));
  CHECK(touches[1].owner == Owner{Owner::Kind::piece, 2});
  CHECK(touches[2].distance == Approx(130));
}

TEST_CASE("grid: every cell is within one cell of the true distance", "[property]") {
  const Air air(scene());
  const Grid grid(air, {{-400, -300}, {1500, 1500}});
  for (int c = 0; c < grid.size(); c += 7) {
    const double exact = air.nearest(grid.middle(c)).distance;
    if (std::abs(grid.clear(c) - exact) > kCell) {
      INFO(grid.middle(c).x << " " << grid.middle(c).y);
      CHECK_THAT(grid.clear(c), Catch::WithinAbs(exact, kCell));
    }
  }
  CHECK(grid.clear(grid.at({450, 100})) == 0);
}

TEST_CASE("grid: what is reached from the border, run by run as cell by cell", "[property]") {
  const Grid grid(Air(scene()), {{-400, -300}, {1500, 1500}});
  const auto on_border = [&](int c) {
    for (Vec2 step : {Vec2{kCell, 0}, Vec2{-kCell, 0}, Vec2{0, kCell}, Vec2{0, -kCell}})
      if (grid.at(grid.middle(c) + step) == c) return true;
    return false;
  };
  for (double by : {0.0, 10.0, 40.0}) {
    std::vector<char> slow(grid.size()), seen(grid.size());
    for (int c = 0; c < grid.size(); ++c) {
      if (seen[c] || grid.clear(c) <= by) continue;
      const std::vector<int> cells = grid.flooded(c, by);
      const bool outside = std::any_of(cells.begin(), cells.end(), on_border);
      for (int k : cells) seen[k] = 1, slow[k] = outside;
    }
    INFO("clear by " << by);
    const bool alike = grid.flooded_from_border(by) == slow, shut_in = seen != slow;
    CHECK(alike);
    CHECK(shut_in);
    CHECK(std::count(slow.begin(), slow.end(), 1) > 0);
  }
}

}  // namespace nook::safe
