// How a piece that was cut wrong is saved: what comes off, what that spoils, when it is cut again.
#include "shop/remedies.h"

#include <catch2/catch.hpp>

#include "cut_shop.h"

using namespace nook;
using namespace nook::sample;
using Catch::WithinAbs;
using Do = Remedy::Do;

namespace {

// A panel 44 1/4 by 80 wanted, 48 wide as it came off the sheet.
Shop unripped() {
  Shop shop;
  shop.need("panel", panel(in(44.25), in(80)));
  shop.measure("panel", panel(in(48), in(80)));
  return shop;
}

std::vector<Do> what_of(const PieceVerify& piece) {
  std::vector<Do> all;
  for (const Remedy& remedy : piece.remedies) all.push_back(remedy.what);
  return all;
}

Cutout square_hole(const std::string& name, double from, double to) {
  Cutout hole;
  hole.name = name;
  hole.outline = {{in(from), in(20)}, {in(to), in(20)}, {in(to), in(30)}, {in(from), in(30)}};
  return hole;
}

}  // namespace

TEST_CASE("remedies: with one width measured the trim is as wide at the other end") {
  Shop shop = unripped();
  shop.cut.pieces[0].widths.resize(1);
  const std::optional<Remedy> trim = trim_of(shop.answer().pieces[0], "right");
  REQUIRE(trim);
  CHECK_THAT(trim->by_first_mm / in(1), WithinAbs(3.75, 0.01));
  CHECK_THAT(trim->by_last_mm / in(1), WithinAbs(3.75, 0.01));
}

TEST_CASE("remedies: a trim that leaves under 1 in beside a cutout - cuts into it") {
  Shop shop = unripped();
  shop.needed[0].sides[1].to_room = false;
  shop.drawn.design.parts[0].cutouts = {square_hole("near", 4.5, 14), square_hole("far", 4.8, 20)};
  const PieceVerify piece = shop.answer().pieces[0];
  const std::optional<Remedy> left = trim_of(piece, "left");
  REQUIRE(left);
  REQUIRE(left->spoils.size() == 2);
  // 4 1/2 less 3 3/4 leaves 3/4; 4.8 less 3 3/4 leaves 1.05.
  CHECK(left->spoils[0].kind == Spoil::Kind::cutout_cut);
  CHECK_THAT(left->spoils[0].by_mm / in(1), WithinAbs(0.75, 0.01));
  CHECK(left->spoils[1].kind == Spoil::Kind::cutout_moves);
  CHECK_THAT(left->spoils[1].by_mm / in(1), WithinAbs(3.75, 0.01));
  CHECK(trim_of(piece, "right")->spoils.empty());
}

TEST_CASE("remedies: too high - off the top first, off the bottom spoils what stands on it") {
  Shop shop;
  shop.need("panel", panel()).notches = {wanted_notch()};
  shop.measure("panel", panel(in(36), in(71))).notches = {notch("lower left", 0.6875, 5.375)};
  const PieceVerify piece = shop.answer().pieces[0];
  REQUIRE(what_of(piece) == std::vector<Do>{Do::trim, Do::trim});
  CHECK(piece.remedies[0].edge == "top");
  CHECK(piece.remedies[0].spoils.empty());
  CHECK(piece.remedies[1].edge == "bottom");
  REQUIRE(piece.remedies[1].spoils.size() == 1);
  CHECK(piece.remedies[1].spoils[0].kind == Spoil::Kind::notch_narrows);
  CHECK_THAT(piece.remedies[1].spoils[0].by_mm / in(1), WithinAbs(1, 0.01));
}

TEST_CASE("remedies: a wedge off one side narrows the notch at its thick end alone") {
  Shop shop;
  NeededPiece& piece = shop.need("panel", panel());
  piece.notches = {{"lower right", in(2), in(3), 0, 0, 0, ""},
                   {"upper right", in(2), in(3), 0, 0, 0, ""}};
  // 36 wide at the bottom, 37 at the top.
  shop.measure("panel", {{0, 0}, {in(36), 0}, {in(37), in(70)}, {0, in(70)}}, 0).notches = {
      notch("lower right", 2, 3), notch("upper right", 2, 3)};
  const std::optional<Remedy> right = trim_of(shop.answer().pieces[0], "right");
  REQUIRE(right);
  CHECK_THAT(right->by_first_mm / in(1), WithinAbs(0.03, 0.02));
  CHECK_THAT(right->by_last_mm / in(1), WithinAbs(0.97, 0.02));
  REQUIRE(right->spoils.size() == 1);
  CHECK(right->spoils[0].name == "upper right");
  CHECK_THAT(right->spoils[0].by_mm / in(1), WithinAbs(0.97, 0.02));
}

TEST_CASE("remedies: a notch that nobody wants - is filled, or the piece is cut again") {
  Shop shop;
  shop.need("panel", panel()).notches = {wanted_notch()};
  shop.measure("panel", panel()).notches = {notch("lower left", 0.6875, 5.375),
                                            notch("upper right", 2, 3)};
  const PieceVerify piece = shop.answer().pieces[0];
  CHECK(piece.verdict == Verdict::does_not_fit);
  REQUIRE(piece.faults.size() == 1);
  CHECK(piece.faults[0].kind == CutFault::Kind::notch_not_wanted);
  CHECK(piece.faults[0].where == "upper right");
  CHECK(what_of(piece) == std::vector<Do>{Do::fill, Do::cut_again});
  CHECK(piece.remedies[0].edge == "upper right");
}

TEST_CASE("remedies: a notch 1/2 too wide - is filled by as much, or the piece is cut again") {
  Shop shop;
  shop.need("panel", panel()).notches = {wanted_notch()};
  shop.measure("panel", panel()).notches = {notch("lower left", 0.6875 + 0.5, 5.375)};
  const PieceVerify piece = shop.answer().pieces[0];
  CHECK(piece.verdict == Verdict::does_not_fit);
  REQUIRE(piece.faults.size() == 1);
  CHECK(piece.faults[0].kind == CutFault::Kind::notch_too_large);
  CHECK(piece.faults[0].where == "lower left, width");
  CHECK(what_of(piece) == std::vector<Do>{Do::fill, Do::cut_again});
  CHECK(piece.remedies[0].edge == "lower left");
  CHECK_THAT(piece.remedies[0].by_mm / in(1), WithinAbs(0.5, 1e-9));
}

TEST_CASE("remedies: too narrow - 3/8 beside a wall is filled, more or no wall is cut again") {
  const auto remedies = [](double short_of, bool wall) {
    Shop shop;
    shop.need("panel", panel()).sides[1].meets_wall = wall;
    shop.measure("panel", panel(in(36 - short_of), in(70)), 0);
    return what_of(shop.answer().pieces[0]);
  };
  CHECK(remedies(0.37, true) == std::vector<Do>{Do::fill, Do::cut_again});
  CHECK(remedies(0.38, true) == std::vector<Do>{Do::cut_again});
  CHECK(remedies(0.25, false) == std::vector<Do>{Do::cut_again});
}

TEST_CASE("remedies: a stick too long - is cut to length by as much at either end") {
  Shop shop;
  shop.need("rail", rectangle(in(80), in(3)));
  shop.drawn.design.stock[0].kind = StockKind::lumber;
  CheckedAt length;
  length.at = inches(1.5), length.measured = {inches(80.5)};
  PieceAsCut cut;
  cut.part = "rail", cut.widths = {length};
  shop.cut.pieces = {cut};
  const std::optional<Remedy> trim = trim_of(shop.answer().pieces[0], "right");
  REQUIRE(trim);
  CHECK_THAT(trim->by_first_mm / in(1), WithinAbs(0.5, 0.001));
  CHECK_THAT(trim->by_last_mm / in(1), WithinAbs(0.5, 0.001));
}

TEST_CASE("remedies: a size half as much again as wanted - is taken again before it is trimmed") {
  for (const double cut : {100.0, 130.0}) {
    Shop shop;
    shop.need("panel", panel(in(36), in(80)));
    shop.measure("panel", panel(in(36), in(cut)));
    const std::vector<Do> what = what_of(shop.answer().pieces[0]);
    INFO(cut << " in high");
    REQUIRE(what.size() >= 2);
    CHECK((what[0] == Do::take_again) == (cut > 120));
    CHECK(what[cut > 120] == Do::trim);
  }
}

TEST_CASE(
    "remedies: too wide under a slanted top - off the low side as well as the top, or not there") {
  // 40 high at the left, 38 at the right, 40 wide; cut 44 wide with the same top, 40 to 37.8. Off
  // its right it is as needed: 38 high there. Off its left it would be 39.8 high where 40 is
  // wanted.
  Shop shop;
  shop.need("panel", {{0, 0}, {in(40), 0}, {in(40), in(38)}, {0, in(40)}});
  shop.measure("panel", {{0, 0}, {in(44), 0}, {in(44), in(37.8)}, {0, in(40)}}, 0);
  const PieceVerify piece = shop.answer().pieces[0];
  REQUIRE(trim_of(piece, "right"));
  CHECK_THAT(trim_of(piece, "right")->by_mm / in(1), WithinAbs(4, 0.05));
  CHECK(trim_of(piece, "right")->spoils.empty());
  CHECK(!trim_of(piece, "left"));
}

TEST_CASE("remedies: too wide under a waved top - comes off either side") {
  // Its top goes up and down by 2 and ends at 82 1/2 on both sides: the tape that read 82 1/8 near
  // its left would read something else further in, but the sides stay as high.
  Shop shop;
  const Polygon waved{{0, 0},           {in(37.25), 0},  {in(37.25), in(82.5)}, {in(31), in(84)},
                      {in(18), in(81)}, {in(6), in(81)}, {0, in(82.5)}};
  shop.need("panel", waved);
  shop.measure("panel", panel(in(48), in(82.5)));
  PieceAsCut& cut = shop.cut.pieces[0];
  cut.diagonals.clear();
  cut.heights.resize(1);
  cut.heights[0].at = inches(1), cut.heights[0].measured = {inches(82.25)};
  const PieceVerify piece = shop.answer().pieces[0];
  for (const std::string side : {"left", "right"}) {
    REQUIRE(trim_of(piece, side));
    CHECK_THAT(trim_of(piece, side)->by_mm / in(1), WithinAbs(10.75, 0.05));
    CHECK(trim_of(piece, side)->also.empty());
  }
}
