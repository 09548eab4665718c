// Outlines: crossings found by the sweep and by brute force, circles round to 0.01 mm.
#include "job/outline.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <random>

using namespace nook;

namespace {

// Least distance of two segments, the slow way: dense points on both.
double sampled_distance(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
  double least = 1e300;
  for (int i = 0; i <= 200; ++i)
    for (int j = 0; j <= 200; ++j)
      least = std::min(least, norm((a + i / 200.0 * (b - a)) - (c + j / 200.0 * (d - c))));
  return least;
}

bool any_edges_near(const Polygon& ring, double near) {
  const std::size_t n = ring.size();
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = i + 2; j < n; ++j)
      if ((j + 1) % n != i &&
          sampled_distance(ring[i], ring[(i + 1) % n], ring[j], ring[(j + 1) % n]) < near)
        return true;
  return false;
}

}  // namespace

TEST_CASE("outline: simple rings do not meet themselves") {
  CHECK_FALSE(first_meeting({{{0, 0}, {10, 0}, {10, 8}, {5, 12}, {0, 8}}}));
  CHECK_FALSE(first_meeting({circle({50, 50}, 30)}));
  CHECK_FALSE(first_meeting({{{0, 0}, {5, 0}, {10, 0}, {10, 10}, {0, 10}}}));  // a point on an edge
}

TEST_CASE("outline: crossing, touching and doubling back are named by edge") {
  const auto bow = first_meeting({{{0, 0}, {10, 10}, {10, 0}, {0, 10}}});
  REQUIRE(bow);
  CHECK((bow->edge_a == 0 && bow->edge_b == 2));
  const auto touch = first_meeting({{{0, 0}, {10, 0}, {10, 10}, {5, 0}, {0, 10}}});
  REQUIRE(touch);
  CHECK((touch->edge_a == 0 && (touch->edge_b == 2 || touch->edge_b == 3)));
  const auto spike =
      first_meeting({{{0, 0}, {10, 0}, {10, 10}, {5, 10}, {5, 15}, {5, 10}, {0, 10}}});
  REQUIRE(spike);
  const auto flat = first_meeting({{{0, 0}, {10, 0}, {5, 0}}});
  CHECK(flat);
}

TEST_CASE("outline: rings that cross each other are told apart") {
  const auto found = first_meeting({{{0, 0}, {10, 0}, {10, 10}, {0, 10}}, circle({10, 5}, 4)});
  REQUIRE(found);
  CHECK(found->ring_a == 0);
  CHECK(found->ring_b == 1);
}

TEST_CASE("outline: the sweep agrees with dense sampling on random rings", "[property]") {
  const unsigned seed = 7101;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> spot(0, 100);
  int simple = 0;
  for (int round = 0; round < 60; ++round) {
    Polygon ring(4 + round % 3);
    for (Vec2& p : ring) p = {spot(random), spot(random)};
    // Sampling every half millimeter sees a crossing as a distance below one, and no crossing
    // hides.
    const bool near = any_edges_near(ring, 0.8);
    const bool met = first_meeting({ring}).has_value();
    if (met) CHECK(near);
    if (!near) CHECK_FALSE(met);
    simple += !met;
  }
  CHECK(simple > 5);
  CHECK(simple < 55);
}

TEST_CASE("outline: ten thousand points take no time", "[property]") {
  Polygon wave;
  for (int i = 0; i < 5000; ++i) wave.push_back({i * 0.5, 20 + 10 * std::sin(i * 0.01)});
  for (int i = 4999; i >= 0; --i) wave.push_back({i * 0.5, 200 + 10 * std::sin(i * 0.02)});
  CHECK_FALSE(first_meeting({wave}));
}

TEST_CASE("outline: a circle stays within 0.01 mm of round and is symmetric to the last bit") {
  for (const double diameter : {0.01, 3.0, 20.0, 234.95, 1000.0}) {
    const Polygon ring = circle({0, 0}, diameter);
    const std::size_t n = ring.size();
    CHECK(n % 4 == 0);
    const double r = diameter / 2;
    for (std::size_t i = 0; i < n; ++i) {
      CHECK(norm(ring[i]) == Approx(r).epsilon(1e-14));
      const double middle = norm(0.5 * (ring[i] + ring[(i + 1) % n]));
      CHECK(r - middle <= 0.01);
      const Vec2 mirrored{-ring[i].x, ring[i].y};
      CHECK(std::find(ring.begin(), ring.end(), mirrored) != ring.end());
    }
    CHECK(ring_area(ring) > 0);
  }
}

TEST_CASE("outline: inside and outside") {
  const Polygon ring = {{0, 0}, {10, 0}, {10, 8}, {5, 2}, {0, 8}};
  CHECK(is_inside(ring, {5, 1}));
  CHECK(is_inside(ring, {1, 6}));
  CHECK_FALSE(is_inside(ring, {5, 4}));
  CHECK_FALSE(is_inside(ring, {11, 1}));
}
