// The largest sphere through an opening, against geometry and dense sampling.
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <random>

#include "safety/left_opening.h"
#include "solid/boolean.h"

namespace nook::safe {
namespace {

Region box(Vec2 low, Vec2 size) {
  return {{low, {low.x + size.x, low.y}, low + size, {low.x, low.y + size.y}}, {}};
}

std::vector<LeftOpening> in_plate(const Polygon& hole, std::vector<Shadow> more = {}) {
  Region plate = box({0, 0}, {900, 1200});
  plate.holes.push_back(hole);
  more.push_back({{Owner::Kind::piece, 0}, plate});
  const Air air(std::move(more));
  return openings(air, Grid(air, {{-200, -200}, {1100, 1400}}), 60, 400);
}

}  // namespace

TEST_CASE("opening: a rectangle passes its shorter side") {
  for (double wide : {61.0, 88.9, 150.25, 228.6, 390.0}) {
    const auto found = in_plate(box({150, 300}, {wide, 480}).outline);
    REQUIRE(found.size() == 1);
    CHECK_THAT(found[0].across, Catch::WithinAbs(wide, 0.005));
  }
}

TEST_CASE("opening: a 3-4-5 triangle passes its inscribed circle") {
  const auto found =
      in_plate({{200, 300}, {500, 300}, {200, 700}});  // legs 300 and 400: radius 100
  REQUIRE(found.size() == 1);
  CHECK_THAT(found[0].across, Catch::WithinAbs(200, 0.005));
  CHECK_THAT(found[0].at.x, Catch::WithinAbs(300, 0.5));
  CHECK_THAT(found[0].at.y, Catch::WithinAbs(400, 0.5));
}

TEST_CASE("opening: what crosses it leaves two, and each touches what bounds it") {
  const auto found = in_plate(box({150, 300}, {400, 400}).outline,
                              {{{Owner::Kind::piece, 1}, box({-50, 400}, {1000, 20})}});
  REQUIRE(found.size() == 2);
  CHECK_THAT(std::min(found[0].across, found[1].across), Catch::WithinAbs(100, 0.005));
  CHECK_THAT(std::max(found[0].across, found[1].across), Catch::WithinAbs(280, 0.005));
  for (const LeftOpening& opening : found) CHECK(opening.rim.size() == 2);
}

TEST_CASE("opening: one that leads to the open is none, one on the floor says so") {
  const Polygon hook{{0, 0},     {900, 0},   {900, 300}, {500, 300},
                     {500, 500}, {900, 500}, {900, 900}, {0, 900}};
  const Air bay({{{Owner::Kind::piece, 0}, {hook, {}}}});
  CHECK(openings(bay, Grid(bay, {{-200, -200}, {1100, 1400}}), 60, 400).empty());
  const Shadow floor{{Owner::Kind::floor, 0}, box({-300, -300}, {1500, 300})};
  const Shadow left{{Owner::Kind::piece, 0}, box({0, 0}, {100, 500})};
  const Shadow right{{Owner::Kind::piece, 1}, box({300, 0}, {100, 500})};
  const Shadow top{{Owner::Kind::piece, 2}, box({0, 300}, {400, 50})};
  const Air air({floor, left, right, top});
  const auto found = openings(air, Grid(air, {{-200, -200}, {600, 700}}), 60, 400);
  REQUIRE(found.size() == 1);
  CHECK(found[0].ground);
  CHECK_THAT(found[0].across, Catch::WithinAbs(200, 0.005));
}

TEST_CASE("opening: dense sampling of the exact air left - the same circle", "[property]") {
  std::mt19937 random(23);
  INFO("seed 23");
  std::uniform_real_distribution<double> u(0, 1);
  for (int round = 0; round < 12; ++round) {
    const Polygon hole{{150 + 60 * u(random), 300},
                       {500, 320 + 60 * u(random)},
                       {520 - 60 * u(random), 650},
                       {250, 600 + 60 * u(random)}};
    const double cross = 380 + 120 * u(random);
    const Region bar = box({0, cross}, {900, 15});
    const auto found = in_plate(hole, {{{Owner::Kind::piece, 1}, bar}});
    for (const Region& left : subtract({{hole, {}}}, {bar})) {
      double most = 0;
      for (double x = 150; x < 520; x += 2)
        for (double y = 300; y < 720; y += 2)
          if (contains(left, {x, y})) most = std::max(most, border_distance(left, {x, y}));
      const auto same = [&](const LeftOpening& o) { return contains(left, o.at); };
      const auto at = std::find_if(found.begin(), found.end(), same);
      if (2 * most <= 60) continue;
      REQUIRE(at != found.end());
      CHECK(at->across >= 2 * most - 0.005);
      CHECK(at->across <= 2 * most + 2 * std::sqrt(2.0) + 0.005);
    }
  }
}

}  // namespace nook::safe
