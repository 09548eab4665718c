// Plain measures of outlines.
#include "solid/polygon.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "random_shapes.h"

using namespace nook;
using namespace nook::twin;
using Catch::WithinAbs;

namespace {

const Region kFrame{{{0, 0}, {10, 0}, {10, 10}, {0, 10}}, {{{3, 3}, {3, 7}, {7, 7}, {7, 3}}}};

}  // namespace

TEST_CASE("polygon: the border counts as inside, the hole does not", "[reference]") {
  CHECK(contains(kFrame, {1, 1}));
  CHECK(contains(kFrame, {0, 5}));
  CHECK(contains(kFrame, {3, 5}));
  CHECK_FALSE(contains(kFrame, {5, 5}));
  CHECK_FALSE(contains(kFrame, {-1, 5}));
}

TEST_CASE("polygon: a line through a frame has two chords", "[reference]") {
  const auto chords = inside(kFrame, {-5, 5}, {1, 0});
  REQUIRE(chords.size() == 2);
  CHECK(chords[0].from == 5);
  CHECK(chords[0].to == 8);
  CHECK(chords[1].from == 12);
  CHECK(chords[1].to == 15);
}

TEST_CASE("polygon: chords and containment agree", "[property]") {
  Random random(3);
  for (int kind = 0; kind < 200; ++kind) {
    const Region region = shape(random, kind);
    const Vec2 p{even(random, -20, 80), even(random, -20, 80)};
    const double turn = even(random, 0, 6);
    for (Stretch s : inside(region, p, {std::cos(turn), std::sin(turn)}))
      CHECK(contains(region, p + 0.5 * (s.from + s.to) * Vec2{std::cos(turn), std::sin(turn)}));
  }
}

TEST_CASE("polygon: distances to a segment, its ends and a border by hand", "[reference]") {
  CHECK(segment_distance({0, 0}, {10, 0}, {4, 3}) == 3);
  CHECK(segment_distance({0, 0}, {10, 0}, {13, 4}) == 5);  // to an end: 3-4-5
  CHECK(segment_distance({0, 0}, {10, 0}, {-6, -8}) == 10);
  CHECK(segment_distance({2, 2}, {2, 2}, {5, 6}) == 5);  // of no length
  CHECK(border_distance(kFrame, {5, 5}) == 2);           // from within the hole
  CHECK(border_distance(kFrame, {1, 5}) == 1);
  CHECK(border_distance(kFrame, {13, 14}) == 5);
  CHECK(border_distance(kFrame, {10, 5}) == 0);
}

TEST_CASE("polygon: areas by hand, holes taken off whichever way they run", "[reference]") {
  CHECK(signed_area({{0, 0}, {4, 0}, {0, 3}}) == 6);
  CHECK(signed_area({{0, 0}, {0, 3}, {4, 0}}) == -6);
  CHECK(signed_area({}) == 0);
  Region turned = kFrame;
  std::reverse(turned.holes[0].begin(), turned.holes[0].end());
  CHECK(area({kFrame}) == 84);
  CHECK(area({turned, kFrame}) == 168);
}
