// What a verdict on a piece as cut names: always something, and the piece that is worst off.
#include "shop/cut_faults.h"

#include <catch2/catch.hpp>

#include "cut_shop.h"

using namespace nook;
using namespace nook::sample;
using Catch::WithinAbs;
using Kind = CutFault::Kind;

namespace {

// A panel 36 by 70 with its notch, off by so much in one way.
PieceVerify off_by(int way, double mm) {
  const double w = in(36), h = in(70);
  Polygon cut = panel();
  if (way == 0) cut[1].x += mm, cut[2].x += mm;
  if (way == 1) cut[2].y += mm, cut[3].y += mm;
  if (way == 2) cut[2].x += mm;
  if (way == 3) cut = {{0, 0}, {w, 0}, {w + mm, h}, {mm, h}};
  NotchAsCut lower_left = notch("lower left", 0.6875, 5.375);
  if (way == 4) *lower_left.width += millimetres(mm);
  Shop shop;
  shop.need("panel", panel()).notches = {wanted_notch()};
  shop.measure("panel", cut, 0).notches = {lower_left};
  return shop.answer().pieces[0];
}

int rank(Verdict verdict) {
  return verdict == Verdict::fits ? 0 : verdict == Verdict::cannot_tell ? 1 : 2;
}

}  // namespace

TEST_CASE("cut faults: the further off the worse, and what is not right has a fault that says so",
          "[property]") {
  int untold = 0;
  for (int way = 0; way < 5; ++way)
    for (const double sign : {1.0, -1.0}) {
      int before = 0;
      for (double off = 0; off < 10; off += 0.2) {
        const PieceVerify piece = off_by(way, sign * off);
        INFO("way " << way << ", " << sign * off << " mm");
        CHECK(rank(piece.verdict) >= before);
        before = rank(piece.verdict);
        CHECK(piece.faults.empty() == (piece.verdict == Verdict::fits));
        if (!piece.faults.empty()) CHECK(piece.faults[0].verdict == piece.verdict);
        untold += piece.verdict == Verdict::cannot_tell;
      }
      CHECK(before == 2);
    }
  CHECK(untold > 15);
}

TEST_CASE("cut faults: an entry for a part with copies has to suit the one it suits worst") {
  Shop shop;
  shop.need("shelf", panel(in(14), in(40)));
  NeededPiece wider = shop.needed[0];
  shop.needed[0].part = "shelf 1";
  wider.part = "shelf 2", wider.outline = wider.fitted = panel(in(14.5), in(40));
  shop.needed.push_back(wider);
  shop.measure("shelf", panel(in(14), in(40)));
  CHECK(shop.answer().pieces[0].verdict == Verdict::does_not_fit);
  shop.cut.pieces[0].part = "shelf 1";
  CHECK(shop.answer().pieces[0].verdict == Verdict::fits);
  CHECK(shop.answer().not_measured == std::vector<std::string>{"shelf 2"});
}

TEST_CASE("cut faults: a belly between two right widths cannot be told, and is named") {
  Shop shop;
  shop.need("panel", panel());
  PieceAsCut& cut = shop.measure("panel", panel(), 0);
  CheckedAt middle = cut.widths[0];
  middle.at = inches(35), middle.measured = {inches(36.5)};
  cut.widths.insert(cut.widths.begin() + 1, middle);
  const PieceVerify piece = shop.answer().pieces[0];
  // Sides are taken to be straight: then this reading is 1/2 from what the others say.
  CHECK(piece.verdict == Verdict::cannot_tell);
  REQUIRE(piece.faults.size() == 1);
  CHECK(piece.faults[0].kind == Kind::disagree);
  CHECK(piece.faults[0].where == "the second width");
  CHECK_THAT(piece.faults[0].off.value / in(1), WithinAbs(0.5, 0.01));
  CHECK(piece.remedies.back().what == Remedy::Do::measure);
}

TEST_CASE("cut faults: wherever a panel is measured, a right one fits and a wide one does not",
          "[property]") {
  for (const double wide : {0.0, 0.25})
    for (const double low : {0.0, 0.01, 1.0, 5.0})
      for (const double high : {69.0, 69.99, 70.0, 70.01, 70.2}) {
        INFO("widths at " << low << " and " << high << ", " << wide << " in too wide");
        Shop shop;
        shop.need("panel", panel());
        PieceAsCut& cut = shop.measure("panel", panel(in(36 + wide), in(70)));
        cut.widths[0].at = inches(low), cut.widths[1].at = inches(high);
        cut.heights[0].at = inches(low), cut.heights[1].at = inches(36 - 70 + high);
        const PieceVerify piece = shop.answer().pieces[0];
        CHECK(piece.verdict == (wide > 0 ? Verdict::does_not_fit : Verdict::fits));
        if (wide > 0) CHECK_THAT(piece.off.value / in(1), WithinAbs(wide, 0.02));
      }
}

namespace {

// A panel 36 by 70, one figure slipped: which of two widths, two heights, two diagonals, and by how
// much.
struct Slip {
  CutDisagreement::Of of;
  int index;
  double by;  // in
};
PieceVerify slipped(const std::vector<Slip>& slips) {
  Shop shop;
  shop.need("panel", panel());
  PieceAsCut& cut = shop.measure("panel", panel());
  for (const Slip& slip : slips)
    (slip.of == CutDisagreement::Of::width    ? cut.widths
     : slip.of == CutDisagreement::Of::height ? cut.heights
                                              : cut.diagonals)[slip.index]
        .measured[0] += inches(slip.by);
  return shop.answer().pieces[0];
}
constexpr auto kWidth = CutDisagreement::Of::width, kHeight = CutDisagreement::Of::height,
               kDiagonal = CutDisagreement::Of::diagonal;

}  // namespace

TEST_CASE("cut faults: a figure that slipped is named, with what it has to be") {
  const struct {
    Slip slip;
    const char* name;
    double right;
  } table[] = {
      {{kWidth, 1, -30}, "the second width", 36},    // 6 for 36
      {{kWidth, 0, 27}, "the first width", 36},      // 63
      {{kHeight, 1, -63}, "the second height", 70},  // 7
      {{kHeight, 0, 3}, "the first height", 70},
      {{kDiagonal, 1, 12}, "the second diagonal", std::hypot(36, 70)},  // a foot
      {{kDiagonal, 0, -70}, "the first diagonal", std::hypot(36, 70)},
  };
  for (const auto& [slip, name, right] : table) {
    INFO(name << " off by " << slip.by);
    const PieceVerify piece = slipped({slip});
    CHECK(piece.verdict == Verdict::cannot_tell);
    REQUIRE(piece.faults.size() == 1);
    CHECK(piece.faults[0].kind == Kind::disagree);
    CHECK(piece.faults[0].where == name);
    CHECK_THAT(piece.faults[0].wanted_mm, WithinAbs(in(right), in(0.125)));
  }
}

TEST_CASE("cut faults: both widths slipped alike, which the heights and diagonals belie") {
  const PieceVerify piece = slipped({{kWidth, 0, -30}, {kWidth, 1, -30}});
  CHECK(piece.verdict == Verdict::cannot_tell);
  REQUIRE(piece.faults.size() == 1);
  CHECK(piece.faults[0].kind == Kind::disagree);
  CHECK(piece.faults[0].where == "the first width");
  CHECK_THAT(piece.faults[0].wanted_mm, WithinAbs(in(36), in(0.125)));
}

TEST_CASE("cut faults: a piece that is cut so much awry is no slip") {
  Shop shop;
  shop.need("panel", panel());
  Polygon narrow = panel();
  narrow[2].x -= in(4);
  shop.measure("panel", narrow);
  const PieceVerify piece = shop.answer().pieces[0];
  CHECK(piece.verdict == Verdict::does_not_fit);
  REQUIRE_FALSE(piece.faults.empty());
  CHECK(piece.faults[0].kind == Kind::too_small);
  CHECK(piece.faults[0].where == "at the top");
}

TEST_CASE("cut faults: a stick is told by its length, however far off that is") {
  const struct {
    double length;
    Kind kind;
  } table[] = {{96, Kind::still_stock},
               {70, Kind::too_large},
               {120, Kind::too_large},
               {40, Kind::too_small},
               {6, Kind::too_small}};
  for (const auto& [length, kind] : table) {
    INFO(length << " in");
    Shop shop;
    shop.need("ledger", panel(in(46.75), in(3)));
    shop.drawn.design.stock[shop.drawn.design.parts[0].stock].kind = StockKind::lumber;
    shop.drawn.design.stock[shop.drawn.design.parts[0].stock].lengths = {inches(96)};
    PieceAsCut cut;
    cut.part = "ledger";
    cut.widths = {{inches(1.5), {inches(length)}, {}, {}}};
    shop.cut.pieces = {cut};
    const PieceVerify piece = shop.answer().pieces[0];
    CHECK(piece.verdict == Verdict::does_not_fit);
    REQUIRE_FALSE(piece.faults.empty());
    CHECK(piece.faults[0].kind == kind);
    CHECK(piece.faults[0].lengthwise);
    CHECK_THAT(piece.faults[0].measured_mm / in(1), WithinAbs(length, 0.02));
  }
}
