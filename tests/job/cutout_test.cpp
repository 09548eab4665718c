// Cutouts of design.toml: which way round they were typed, how many there may be.
#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "base/diagnostic.h"
#include "job/job.h"

using namespace nook;

namespace {

std::string panel_with(const std::string& cutouts) {
  return "corner = ['left', 'right']\n[stock.ply]\nkind = 'plywood'\nthickness = '3/4'\n"
         "[[part]]\nname = 'panel'\nstock = 'ply'\n"
         "place = { at = [0, 0, 0], u = '+y', v = '+z' }\nshape = { size = [30, 40] }\n"
         "cutouts = [" +
         cutouts + "]\n";
}

Cutout cutout(const std::string& typed) {
  const auto design = parse_design(panel_with(typed), "design.toml");
  REQUIRE(design);
  return design->parts.at(0).cutouts.at(0);
}

// Twice the area, above 0 where the ring runs anticlockwise: the shoelace formula.
double twice_area(const Polygon& ring) {
  double sum = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2 a = ring[i], b = ring[(i + 1) % ring.size()];
    sum += a.x * b.y - b.x * a.y;
  }
  return sum;
}

}  // namespace

TEST_CASE("cutouts: either way round they are the same hole, from the point typed first") {
  const Cutout there = cutout("{ points = [[10, 10], [20, 10], [20, 25], [10, 18]] }");
  const Cutout back = cutout("{ points = [[10, 10], [10, 18], [20, 25], [20, 10]] }");
  CHECK(back.outline == there.outline);
  // A trapezoid 10 wide, 8 high at one side and 15 at the other.
  CHECK(twice_area(back.outline) / (25.4 * 25.4) == Approx(10 * (8 + 15)));
  CHECK(back.outline[0].x == Approx(254));
  CHECK(back.outline[0].y == Approx(254));
}

TEST_CASE("cutouts: a circle and a rectangle run the same way as points do") {
  CHECK(twice_area(cutout("{ circle = [15, 20], diameter = 8 }").outline) > 0);
  CHECK(twice_area(cutout("{ rect = [5, 5, 8, 3] }").outline) / (25.4 * 25.4) == Approx(48));
}

TEST_CASE("cutouts: five thousand and one are refused as a whole") {
  std::string many;
  for (int i = 0; i <= 5000; ++i)
    many +=
        fmt::format("{{ rect = [{}, {}, 0.1, 0.1] }}, ", 0.2 + i % 100 * 0.2, 0.2 + i / 100 * 0.2);
  const std::string text = panel_with(many);
  const auto read = parse_design(text, "design.toml");
  REQUIRE_FALSE(read);
  REQUIRE(read.error().size() == 1);
  CHECK(read.error()[0].what == "over 5000 cutouts");
  CHECK(read.error()[0].help == "divide the part");
}
