// Figures of a piece written in each other's place: told as that, and no saw is set by them.
#include "shop/mixed_figures.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "cut_shop.h"

using namespace nook;
using namespace nook::sample;
using Catch::WithinAbs;
using Kind = CutFault::Kind;

namespace {

PieceVerify told(void (*slip)(PieceAsCut&)) {
  Shop shop;
  shop.need("panel", panel()).notches = {wanted_notch()};
  PieceAsCut& cut = shop.measure("panel", panel());
  cut.notches = {notch("lower left", 0.6875, 5.375)};
  slip(cut);
  return shop.answer().pieces[0];
}

void check_slip(const PieceVerify& piece, Kind kind, const std::string& other) {
  CHECK(piece.verdict == Verdict::cannot_tell);
  REQUIRE(piece.faults.size() == 1);
  CHECK(piece.faults[0].kind == kind);
  CHECK(piece.faults[0].other == other);
  CHECK(std::isfinite(piece.off.value));
  REQUIRE(piece.remedies.size() == 1);
  CHECK(piece.remedies[0].what == Remedy::Do::mend_file);
}

}  // namespace

TEST_CASE("mixed figures: widths for heights, size for place, a notch's width for its height") {
  check_slip(told([](PieceAsCut& cut) { std::swap(cut.widths, cut.heights); }),
             Kind::figures_swapped, "keys");
  check_slip(told([](PieceAsCut& cut) {
               for (auto* sizes : {&cut.widths, &cut.heights})
                 for (CheckedAt& size : *sizes) std::swap(size.at, size.measured[0]);
             }),
             Kind::figures_swapped, "pairs");
  check_slip(told([](PieceAsCut& cut) { std::swap(cut.notches[0].width, cut.notches[0].height); }),
             Kind::figures_swapped, "notches");
}

TEST_CASE("mixed figures: a width taken above the top is named with where the piece ends") {
  const PieceVerify piece = told([](PieceAsCut& cut) { cut.widths[1].at = inches(75); });
  check_slip(piece, Kind::taken_beyond, "");
  CHECK(piece.faults[0].where == "the second width");
  CHECK_THAT(piece.faults[0].measured_mm / in(1), WithinAbs(75, 1e-9));
  CHECK_THAT(piece.faults[0].wanted_mm / in(1), WithinAbs(70, 0.01));
  CHECK(told([](PieceAsCut& cut) { cut.heights[0].at = inches(36.5); }).faults.at(0).where ==
        "the first height");
}

TEST_CASE("mixed figures: up to the end and 1/4 beyond it nothing is wrong with the place") {
  CHECK(told([](PieceAsCut& cut) { cut.widths[1].at = inches(70.2); }).verdict == Verdict::fits);
  CHECK(told([](PieceAsCut&) {}).verdict == Verdict::fits);
}

TEST_CASE("mixed figures: without heights a piece may still be as long as its stock") {
  const auto alone = [](double at) {
    Shop shop;
    shop.need("panel", panel());
    PieceAsCut& cut = shop.measure("panel", panel());
    cut.heights.clear(), cut.diagonals.clear();
    cut.widths[1].at = inches(at);
    return shop.answer().pieces[0].faults.at(0).kind;
  };
  // Sheets are 96 long: a width at 95 shows that it was not cut to 70 yet, one at 97 is a slip.
  CHECK(alone(95) != Kind::taken_beyond);
  CHECK(alone(97) == Kind::taken_beyond);
}
