// The page and the JSON of the cutting list.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <random>

#include "sheet/cut_json.h"
#include "sheet/cut_text.h"
#include "sheet/cut_words.h"

using namespace nook;

namespace {

double in(double x) {
  return inches(x).mm;
}

CutPiece panel() {
  CutPiece piece;
  piece.part = "front panel";
  piece.names = {"front panel"};
  piece.stock = "ply";
  piece.thickness_mm = in(23.0 / 32);
  piece.blank = {in(37.75), in(84)};
  piece.finished = {in(37.5), in(84)};
  piece.outline = {{0, 0}, {in(37.5), 0}, {in(37.5), in(84)}, {0, in(84)}};
  piece.wild = {{"left", in(0.25)}};
  CutScribe scribe;
  scribe.edge = "left", scribe.meets = "left wall";
  scribe.touches_at = in(36), scribe.setting_mm = in(9.0 / 16);
  scribe.spots = {{0, in(0.25)}, {in(36), in(9.0 / 16)}, {in(84), in(0.375)}};
  piece.scribes = {scribe};
  CutNotch notch;
  notch.corner = "lower left", notch.width_mm = in(0.69), notch.height_mm = in(5.375);
  notch.around = "left wall baseboard", notch.wild_across_mm = in(0.25);
  piece.notches = {notch};
  CutHole porthole;
  porthole.name = "porthole", porthole.across = EdgeSide::right;
  porthole.from_across_mm = in(19.25), porthole.from_up_mm = in(24);
  porthole.diameter_mm = in(9.25);
  piece.holes = {porthole};
  piece.checks = {{{in(2), in(37.75)}, {in(82), in(37.75)}},
                  {{in(2), in(84)}, {in(35.75), in(84)}},
                  {in(92.0937), in(92.0937)}};
  return piece;
}

CutPiece ledger() {
  CutPiece piece;
  piece.part = "ledger";
  piece.names = {"ledger 1", "ledger 2"};
  piece.stock = "rail";
  piece.stick = true;
  piece.exact_across = true;
  piece.blank = piece.finished = {in(46.05), in(3)};
  piece.pilots = {
      {"left 1", "", "right", "top", in(15.0625), in(0.5), 4, false, {{"left 4", false}}},
      {"left 2", "", "right", "top", in(14.9375), in(2.5), 4, false, {{"left 5", true}}},
      {"left 3", "", "right", "top", in(31.125), in(0.5), 4, true, {{"left 6", true}}}};
  piece.checks.diagonals = {in(46.1), in(46.1)};
  return piece;
}

CutAnswer sample_list() {
  CutAnswer list;
  list.pieces = {panel(), ledger()};
  StockCut ply{"ply", "plywood", in(23.0 / 32), std::nullopt, std::nullopt, std::nullopt};
  ply.sheets = lay_on_sheets({{"front panel", in(37.75), in(84)}}, in(48), in(96));
  StockCut rail{"rail", "lumber", in(1.25), in(3), std::nullopt, std::nullopt};
  rail.boards = lay_on_boards({{"ledger 1", in(46.05)}, {"ledger 2", in(46.05)}}, {in(96)});
  list.stock = {ply, rail};
  list.shopping = {{Purchase::Kind::screw, "#10 wood screw", 12, in(3), 0}};
  return list;
}

}  // namespace

TEST_CASE("cut page: the list, each piece, the layout, what to buy") {
  CHECK(cut_text(sample_list(), Style{}) == R"(Cutting list: FITS

ply, 23/32" plywood
   1  front panel: 37 3/4" x 84"
rail, 1 1/4 x 3" lumber
   2  ledger: 46"

front panel
  cut 37 3/4" x 84", finished 37 1/2" x 84"
  leave wild: left edge, 1/4" beyond its finished line
  scribe the left edge to the left wall: hold the blank parallel to its place,
  touching at 36", set the scribers to 9/16"; for roughing out, off the blank
  1/4" at 0, 9/16" at 36, 3/8" at 84
  notch lower left: 3/4" wide from the finished line, 1" from the wild edge,
  5 3/8" high, around left wall baseboard
  porthole: 9 1/4" across, its middle 19 1/4" from the right edge, 24" from the
  bottom
  check before notching: width 37 3/4" at 2, 37 3/4" at 82; height 84" at 2, 84"
  at 35 3/4; diagonals 92 1/16" and 92 1/16"

ledger (2 alike)
  cut 46" long
  bore left 1, 3 (on the other 4, 6): 1/2" from the top edge; from the right end
  15 1/16, 31 1/8; probe the wall first at 3, 6
  bore left 2 (on the other 5): 2 1/2" from the top edge; from the right end
  14 15/16; probe the wall first at 5

Laid out with a kerf of 1/8":
ply, 23/32" plywood
  a sheet of 48 x 96": front panel 37 3/4 x 84
  31 in 100 is waste
rail, 1 1/4 x 3" lumber
  a board of 96": ledger 1 46 1/16, ledger 2 46 1/16
  4 in 100 is waste

Besides the stock, buy:
  12 #10 wood screw x 3"

Sizes are bare wood: paint adds about 1/64" a face and is not taken off. Cut to
the waste side of the line.
)");
}

TEST_CASE("cut page: rounding never eats a clearance", "[property]") {
  const unsigned seed = 31;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> any(1, 2500);
  for (const Rounding rounding :
       {Rounding{Unit::inch, inches(1.0 / 16)}, Rounding{Unit::inch, inches(1.0 / 32)},
        Rounding{Unit::mm, millimetres(1)}})
    for (int i = 0; i < 2000; ++i) {
      const double mm = any(random);
      const auto value = [&](const std::string& text) {
        return read_length(text, rounding.unit, rounding.step)->value.mm;
      };
      CHECK(value(rounded_up(mm, rounding)) >= mm - 1e-3);
      CHECK(value(rounded_up(mm, rounding)) < mm + rounding.step.mm);
      CHECK(value(rounded_down(mm, rounding)) <= mm + 1e-3);
      CHECK(value(rounded_down(mm, rounding)) > mm - rounding.step.mm);
    }
  CHECK(rounded_up(inches(0.5).mm, Rounding{}) == "1/2\"");
  CHECK(rounded_down(inches(0.5).mm, Rounding{}) == "1/2\"");
}

TEST_CASE("cut JSON: outlines, blanks, checks, not rounded") {
  const Json json = cut_json(sample_list(), "job");
  CHECK(json["answer"] == "cut");
  const Json& piece = json["pieces"][0];
  CHECK(piece["part"] == "front panel");
  CHECK(piece["count"] == 1);
  CHECK(piece["outline_mm"][1][0] == in(37.5));
  CHECK(piece["blank_mm"][0] == in(37.75));
  CHECK(piece["checks"]["widths"][1][0] == in(82));
  CHECK(piece["checks"]["heights"][0][1] == in(84));
  CHECK(piece["checks"]["diagonals"][0] == in(92.0937));
  CHECK(json["pieces"][1]["count"] == 2);
  CHECK(json["shopping"][0]["count"] == 12);
}

TEST_CASE("cut page: a piece that is no rectangle is not told as one") {
  CutPiece gusset;
  gusset.part = "gusset", gusset.names = {"gusset"}, gusset.stock = "ply";
  gusset.blank = gusset.finished = {in(30), in(24)};
  gusset.contour = {{0, 0}, {in(30), 0}, {in(20), in(24)}, {in(4), in(24)}};
  gusset.sides = {in(24.331), in(26), in(30), in(16)};
  gusset.slants = {{EdgeSide::right, in(10), true, 22.62}, {EdgeSide::left, in(4), true, 9.46}};
  gusset.checks = {{{in(2), in(28.8333)}},
                   {{in(2), in(12)}},
                   {in(31.25), in(35.375)},
                   {{Vec2{0, 0}, Vec2{in(20), in(24)}}, {Vec2{in(30), 0}, Vec2{in(4), in(24)}}}};
  CHECK(piece_words(gusset, usual_rounding(Unit::inch)) == R"(gusset
  cut 30" x 24"
  30" along the bottom, 16" along the top
  cut the right edge slanted: 10" in at the top, 22.6 degrees off square
  cut the left edge slanted: 4" in at the top, 9.5 degrees off square
  outline, across and up from the lower left corner of the blank: (0, 0) (30, 0)
  (20, 24) (4, 24)
  check before notching: width 28 13/16" at 2; height 12" at 2; diagonals
  31 1/4" from (0, 0) to (20, 24) and 35 3/8" from (30, 0) to (4, 24)
)");
}

TEST_CASE("cut page: wild wood and finished size add up to the blank, copies alike are named") {
  CutPiece rail;
  rail.part = "rail 1", rail.names = {"rail 1", "rail 2", "rail 4"}, rail.stick = true;
  rail.blank = {in(56.875), in(3.5)}, rail.finished = {in(56.43), in(3.5)};
  rail.wild = {{"left", in(56.875 - 56.43)}};
  const std::string words = piece_words(rail, usual_rounding(Unit::inch));
  CHECK(words == R"(rail 1, 2 and 4 (3 alike)
  cut 56 7/8" long, finished 56 7/16"
  leave wild: left edge, 7/16" beyond its finished line
)");
}
