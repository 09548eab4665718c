// Unions, intersections and differences: shapes known by hand, and thousands against another
// library.
#include "solid/boolean.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "geos_twin.h"
#include "random_shapes.h"

using namespace nook;
using namespace nook::twin;
using Catch::WithinAbs;

namespace {

Polygon square(double x, double y, double size) {
  return {{x, y}, {x + size, y}, {x + size, y + size}, {x, y + size}};
}

void compare(Random& random, int kind) {
  const Regions a{shape(random, kind)}, b{shape(random, kind / 5 + kind)};
  const double bound = 1e-9 * (area(a) + area(b));
  CHECK_THAT(area(unite(a, b)), WithinAbs(area_by_geos(a, b, Operation::unite), bound));
  CHECK_THAT(area(intersect(a, b)), WithinAbs(area_by_geos(a, b, Operation::intersect), bound));
  CHECK_THAT(area(subtract(a, b)), WithinAbs(area_by_geos(a, b, Operation::subtract), bound));
  CHECK_THAT(area(unite(a, b)) + area(intersect(a, b)), WithinAbs(area(a) + area(b), bound));
}

void compare_many(int cases) {
  constexpr std::uint64_t kSeed = 4;
  Random random(kSeed);
  for (int kind = 0; kind < cases; ++kind) {
    INFO("seed " << kSeed << ", case " << kind);
    compare(random, kind);
  }
}

}  // namespace

TEST_CASE("outlines: a square less a smaller one is a frame", "[reference]") {
  const Regions frame = subtract(Regions{{square(0, 0, 10), {}}}, Regions{{square(2, 2, 6), {}}});
  REQUIRE(frame.size() == 1);
  CHECK(frame[0].outline == square(0, 0, 10));
  REQUIRE(frame[0].holes.size() == 1);
  CHECK(signed_area(frame[0].holes[0]) == -36);
}

TEST_CASE("outlines: squares that share a side become one, that share a corner stay two",
          "[reference]") {
  CHECK(unite({square(0, 0, 10), square(10, 0, 10)}).size() == 1);
  CHECK(intersect(Regions{{square(0, 0, 10), {}}}, Regions{{square(10, 0, 10), {}}}).empty());
  CHECK_THAT(area(unite({square(0, 0, 10), square(10, 10, 10)})), WithinAbs(200, 1e-9));
}

TEST_CASE("outlines: either way round, doubled points and rings without area are taken",
          "[reference]") {
  Polygon backwards = square(0, 0, 10);
  std::reverse(backwards.begin(), backwards.end());
  backwards.push_back(backwards.back());
  CHECK_THAT(area(unite({backwards})), WithinAbs(100, 1e-12));
  CHECK(unite({{{0, 0}, {5, 0}, {5, 0}}}).empty());
  CHECK(unite({{{0, 0}, {5, 0}, {10, 0}}}).empty());
}

TEST_CASE("outlines: a ring that crosses itself bounds what it winds round", "[reference]") {
  CHECK_THAT(area(unite({{{0, 0}, {10, 10}, {10, 0}, {0, 10}}})), WithinAbs(50, 1e-9));
  // A square run through twice, the second time smaller: all of it, once.
  CHECK_THAT(area(unite({{{0, 0}, {10, 0}, {10, 10}, {0, 10}, {0, 0}, {5, 0}, {5, 5}, {0, 5}}})),
             WithinAbs(100, 1e-9));
}

TEST_CASE("outlines: holes that touch a border or one another are told once and can be used again",
          "[reference]") {
  const Regions whole{{square(0, 0, 10), {}}};
  const Polygon at_border{{5, 0}, {7, 4}, {3, 4}};  // touches it with one corner
  const Polygon left{{2, 8}, {4, 6}, {4, 7}},
      right{{2, 8}, {4, 9}, {3, 9}};  // share their leftmost
  const Regions bitten = subtract(whole, unite({at_border}));
  REQUIRE(bitten.size() == 1);
  CHECK(std::count(bitten[0].outline.begin(), bitten[0].outline.end(), Vec2{5, 0}) == 2);
  CHECK(bitten[0].holes.empty());
  const Regions pierced = subtract(whole, unite({left, right}));
  REQUIRE(pierced.size() == 1);
  CHECK(pierced[0].outline == square(0, 0, 10));
  CHECK(pierced[0].holes.size() == 1);
  CHECK_THAT(area(pierced), WithinAbs(100 - 1 - 0.5, 1e-12));
  const Regions both = intersect(bitten, pierced);
  CHECK_THAT(area(both), WithinAbs(100 - 8 - 1 - 0.5, 1e-12));
  CHECK_THAT(area(unite(bitten, both)), WithinAbs(100 - 8, 1e-12));
}

TEST_CASE("outlines: a hole takes wood from its own set alone", "[reference]") {
  const Regions frame = subtract(Regions{{square(0, 0, 10), {}}}, Regions{{square(2, 2, 6), {}}});
  const Regions plug{{square(3, 3, 2), {}}};
  CHECK_THAT(area(unite(frame, plug)), WithinAbs(64 + 4, 1e-12));
  CHECK(intersect(frame, plug).empty());
  CHECK_THAT(area(subtract(plug, frame)), WithinAbs(4, 1e-12));
}

TEST_CASE("outlines: many rings united at once agree with another library", "[property]") {
  constexpr std::uint64_t kSeed = 6;
  Random random(kSeed);
  for (const int count : {2, 10, 60, 64, 65, 200})
    for (const double radius : {10.0, 60.0}) {  // mostly apart, and all over one another
      INFO("seed " << kSeed << ", " << count << " rings of radius " << radius);
      std::vector<Polygon> rings;
      for (int i = 0; i < count; ++i)
        rings.push_back(star(random, {even(random, 0, 150), even(random, 0, 150)}, radius, 6));
      CHECK_THAT(area(unite(rings)), WithinAbs(area_united_by_geos(rings), 1e-6));
    }
}

TEST_CASE("outlines: a coordinate that is nothing is not minus nothing", "[reference]") {
  const Polygon low = {{-5, -1e-4}, {5, -1e-4}, {5, 5}, {-5, 5}};
  const Polygon across = {{-1e-4, -5}, {9, -5}, {9, 9}, {-1e-4, 9}};
  const Regions corner = intersect(Regions{{low, {}}}, Regions{{across, {}}});
  REQUIRE(corner.size() == 1);
  CHECK(corner[0].outline == square(0, 0, 5));
  for (const Vec2 p : corner[0].outline) CHECK_FALSE((std::signbit(p.x) || std::signbit(p.y)));
}

TEST_CASE("outlines: hundreds of random pairs agree with another library", "[property]") {
  compare_many(300);
}

TEST_CASE("outlines: ten thousand random pairs agree with another library", "[property][.full]") {
  compare_many(10000);
}

TEST_CASE("outlines: what is far apart shares nothing, what touches boxes is looked at") {
  const Polygon square{{0, 0}, {10, 0}, {10, 10}, {0, 10}};
  const auto moved = [&](double x) {
    Polygon out = square;
    for (Vec2& p : out) p.x += x;
    return out;
  };
  CHECK(far_apart(square, moved(10.0011)));
  CHECK_FALSE(far_apart(square, moved(10.0009)));  // may meet once both are on the grid
  CHECK(far_apart(square, {}));
  CHECK(intersect(Regions{{square, {}}}, Regions{{moved(11), {}}}).empty());
  CHECK(area(intersect(Regions{{square, {}}}, Regions{{moved(9), {}}})) == Approx(10));
  // A corner cut off: the boxes overlap, the outlines do not.
  const Polygon corner{{9.5, 10}, {10, 9.5}, {10, 10}};
  const Polygon cut{{0, 0}, {10, 0}, {10, 9}, {9, 10}, {0, 10}};
  CHECK_FALSE(far_apart(cut, corner));
  CHECK(intersect(Regions{{cut, {}}}, Regions{{corner, {}}}).empty());
  CHECK(unite(std::vector<Polygon>{}).empty());
}
