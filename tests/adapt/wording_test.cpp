// The words of a change give the sizes that are written.
#include "adapt/wording.h"

#include <catch2/catch.hpp>

#include "job/job.h"

using namespace nook;

TEST_CASE("wording: a second taper is told by the sizes it leaves, from edge to edge at each end") {
  const std::string text =
      "units = 'mm'\ncorner = ['left', 'right']\n[stock.mdf]\nkind = 'mdf'\nthickness = '18'\n"
      "[[part]]\nname = 'shelf'\nstock = 'mdf'\n"
      "shape = { points = [['0', '0'], ['1207', '0'], ['1207', '400'], ['24', '400']] }\n"
      "place = { at = ['0', '0', '700'], u = '+x', v = '+y' }\n";
  const auto design = parse_design(text, "design.toml");
  REQUIRE(design);
  // Its left side runs in by 24 already; its right one comes in by 8 at the bottom and goes out by
  // 13 at the top: 1207 - 8 and 1207 + 13 - 24 are left.
  const Candidate taper{
      "shelf", "taper", "too wide", "", {RunSetOut{0, {1, 1}, {-8, 13}, "that side"}}};
  const Change change = told(taper, *design, usual_rounding(Unit::mm));
  CHECK(change.before == "1207 mm across at its bottom, 1183 mm at its top");
  CHECK(change.after == "1199 mm across at its bottom, 1196 mm at its top");
}

TEST_CASE("wording: beside a slanted top the width is told to the far side all the same") {
  const std::string text =
      "units = 'mm'\ncorner = ['left', 'right']\n[stock.mdf]\nkind = 'mdf'\nthickness = '18'\n"
      "[[part]]\nname = 'shelf'\nstock = 'mdf'\n"
      "shape = { points = [['0', '0'], ['800', '0'], ['800', '100'], ['0', '700']] }\n"
      "place = { at = ['0', '0', '700'], u = '+x', v = '+y' }\n";
  const auto design = parse_design(text, "design.toml");
  REQUIRE(design);
  const Candidate trim{
      "shelf", "trim", "too wide", "", {RunSetOut{0, {1, 1}, {-10, -10}, "that side"}}};
  const Change change = told(trim, *design, usual_rounding(Unit::mm));
  CHECK(change.before == "800 mm across");
  CHECK(change.after == "790 mm across");
}
