// Outlines that are alike on both sides, made up by mirroring half of one.
#include "design/symmetry.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

using namespace nook;

namespace {

// The right half climbs from the bottom to the top of the center line at u = 100; the left half is
// its mirror image. The ring begins anywhere.
Polygon mirrored_ring(std::mt19937& random) {
  std::uniform_real_distribution<double> out(10, 90);
  std::uniform_int_distribution<int> count(2, 6);
  Polygon right;
  const int n = count(random);
  for (int k = 0; k < n; ++k) right.push_back({100 + out(random), 50.0 * k});
  Polygon ring = right;
  for (auto p = right.rbegin(); p != right.rend(); ++p) ring.push_back({200 - p->x, p->y});
  std::rotate(ring.begin(), ring.begin() + count(random) % ring.size(), ring.end());
  return ring;
}

Cutout hole(double at, double width) {
  Cutout cutout;
  cutout.outline = {{at, 10}, {at + width, 10}, {at + width, 20}, {at, 20}};
  return cutout;
}

Part square_with(std::vector<Cutout> cutouts) {
  Part part;
  part.outline = {{0, 0}, {200, 0}, {200, 100}, {0, 100}};
  part.cutouts = std::move(cutouts);
  return part;
}

}  // namespace

TEST_CASE("symmetry: a mirrored ring is alike on both sides, with one corner moved it is not",
          "[property]") {
  const unsigned seed = GENERATE(range(1u, 31u));
  INFO("seed " << seed);
  std::mt19937 random(seed);
  Part part;
  part.outline = mirrored_ring(random);
  CHECK(alike_on_both_sides(part));
  part.outline[seed % part.outline.size()].y += 1;
  CHECK_FALSE(alike_on_both_sides(part));
}

TEST_CASE("symmetry: the run across is the mirror image of the run, edge by edge", "[property]") {
  const unsigned seed = GENERATE(range(1u, 31u));
  INFO("seed " << seed);
  std::mt19937 random(seed);
  const Polygon ring = mirrored_ring(random);
  const int n = static_cast<int>(ring.size());
  for (int first = 0; first < n; ++first)
    for (int edges = 1; edges < n; ++edges) {
      const EdgeRun run{first, (first + edges - 1) % n}, other = run_across(ring, run);
      const Vec2 begin = ring[run.first], end = ring[(run.last + 1) % n];
      // Mirrored, the run goes backwards.
      CHECK(norm(ring[other.first] - Vec2{200 - end.x, end.y}) < 1e-9);
      CHECK(norm(ring[(other.last + 1) % n] - Vec2{200 - begin.x, begin.y}) < 1e-9);
    }
}

TEST_CASE("symmetry: a cutout stands in the middle or has another one across from it") {
  CHECK(alike_on_both_sides(square_with({hole(90, 20)})));
  CHECK(alike_on_both_sides(square_with({hole(20, 30), hole(150, 30)})));
  CHECK_FALSE(alike_on_both_sides(square_with({hole(20, 30)})));
  CHECK_FALSE(alike_on_both_sides(square_with({hole(20, 30), hole(150, 25)})));
}

TEST_CASE("symmetry: 0.01 mm is alike, 0.02 mm is not") {
  Part part = square_with({});
  part.outline[2].y += 0.009;
  CHECK(alike_on_both_sides(part));
  part.outline[2].y += 0.011;
  CHECK_FALSE(alike_on_both_sides(part));
}
