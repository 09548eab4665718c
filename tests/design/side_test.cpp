// Which edges of an outline are its left, right, bottom and top side.
#include "design/side.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "design/piece.h"

using namespace nook;

namespace {

constexpr EdgeSide kSides[] = {EdgeSide::left, EdgeSide::right, EdgeSide::bottom, EdgeSide::top};

bool is_run(const EdgeRun& run, int first, int last) {
  return run.first == first && run.last == last;
}

// A convex outline of many points, anticlockwise: an ellipse.
Polygon ellipse(int points, double a, double b) {
  Polygon outline;
  for (int k = 0; k < points; ++k) {
    const Direction way = direction(degrees(360.0 * (k + 0.3) / points));
    outline.push_back({a * way.cos, b * way.sin});
  }
  return outline;
}

Vec2 middle_of(const Polygon& outline, int edge) {
  return 0.5 * (outline[edge] + outline[(edge + 1) % outline.size()]);
}

}  // namespace

TEST_CASE("sides: a rectangle's edges are bottom, right, top, left") {
  const Polygon outline{{0, 0}, {40, 0}, {40, 30}, {0, 30}};
  CHECK(is_run(side_of(outline, EdgeSide::bottom), 0, 0));
  CHECK(is_run(side_of(outline, EdgeSide::right), 1, 1));
  CHECK(is_run(side_of(outline, EdgeSide::top), 2, 2));
  CHECK(is_run(side_of(outline, EdgeSide::left), 3, 3));
}

TEST_CASE("sides: points along a straight side do not end it, where the outline begins neither") {
  const Polygon outline{{20, 0}, {40, 0}, {40, 10}, {40, 30}, {0, 30}, {0, 0}, {10, 0}};
  CHECK(is_run(side_of(outline, EdgeSide::bottom), 5, 0));  // through point 0
  CHECK(is_run(side_of(outline, EdgeSide::right), 1, 2));
}

TEST_CASE("sides: of two steps to the left the outer one is the left side") {
  // Notched at its upper left: the lower edge stands further out.
  const Polygon outline{{0, 0}, {40, 0}, {40, 30}, {5, 30}, {5, 10}, {0, 10}};
  CHECK(is_run(side_of(outline, EdgeSide::left), 5, 5));
  CHECK(is_run(side_of(outline, EdgeSide::top), 2, 2));
}

TEST_CASE("sides: of a flat wedge it is the edge that faces that way most") {
  const Polygon wedge{{0, 0}, {100, 0}, {40, 10}};  // its slopes lie within 15 degrees of level
  CHECK(is_run(side_of(wedge, EdgeSide::left), 2, 2));
  CHECK(is_run(side_of(wedge, EdgeSide::right), 1, 1));
  CHECK(is_run(side_of(wedge, EdgeSide::bottom), 0, 0));
}

TEST_CASE("sides: a taper is still that side") {
  const Polygon outline{{0, 0}, {46, 0}, {46, 36}, {-1, 36}};
  CHECK(is_run(side_of(outline, EdgeSide::left), 3, 3));
}

TEST_CASE("sides: no edge's middle lies further out than the side's", "[property]") {
  const Polygon outline = ellipse(GENERATE(range(7, 40)), 300, 120);
  const int n = static_cast<int>(outline.size());
  for (const EdgeSide side : kSides) {
    const EdgeRun run = side_of(outline, side);
    INFO(n << " points, " << name_of(side));
    CHECK(run.first == run.last);
    const double sign = side == EdgeSide::right || side == EdgeSide::top ? 1 : -1;
    const auto out = [&](int e) {
      const Vec2 m = middle_of(outline, e);
      return sign * (upright(side) ? m.x : m.y);
    };
    for (int e = 0; e < n; ++e) CHECK(out(e) <= out(run.first) + 1e-9);
  }
}

TEST_CASE("sides: the side across is across, and back again") {
  for (const EdgeSide side : kSides) {
    CHECK(opposite(side) != side);
    CHECK(opposite(opposite(side)) == side);
    CHECK(upright(opposite(side)) == upright(side));
  }
  CHECK(std::string(name_of(EdgeSide::left)) == "left");
  CHECK(std::string(name_of(opposite(EdgeSide::left))) == "right");
  CHECK(std::string(name_of(opposite(EdgeSide::top))) == "bottom");
}
