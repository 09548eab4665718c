// What a piece weighs, told on the sheets as the cautions tell it.
#include "sheet/lift.h"

#include <catch2/catch.hpp>

#include "fasten/said.h"

using namespace nook;

namespace {

struct Stick {
  Design design;
  Piece piece;

  // 1 1/4 by 3 in, of a specific gravity of 0.42: 462 kg/m3 with 10 % of moisture in it.
  explicit Stick(double inches_long) {
    Stock stock;
    stock.density = 462;
    design.stock = {stock};
    const double length = inches(inches_long).mm, width = inches(3).mm;
    Part part;
    part.outline = {{0, 0}, {length, 0}, {length, width}, {0, width}};
    design.parts = {part};
    piece.drawn = &design.parts[0];
    piece.thickness = inches(1.25).mm;
  }
  std::string told(Unit unit) const { return lift_words(design, piece, unit); }
};

}  // namespace

TEST_CASE("lift: a weight is rounded on the sheet as the cautions round it") {
  // 52 x 3 x 1.25 in = 195 in3 = 3.1955 l: 1.476 kg or 3.25 lb, 14.48 N.
  const Stick ledger(52);
  CHECK(ledger.told(Unit::inch) == "3 lb, one person");
  CHECK(Saying{Unit::inch}.load(14.48) == "3 lb");
  CHECK(ledger.told(Unit::mm) == "1 kg, one person");
  CHECK(Saying{Unit::mm}.load(14.48) == "1 kg");
}

TEST_CASE("lift: what weighs next to nothing is told as less than one") {
  const Stick block(6);  // 22.5 in3: 0.170 kg or 0.376 lb
  CHECK(block.told(Unit::inch) == "under 1 lb, one person");
  CHECK(block.told(Unit::mm) == "under 1 kg, one person");
}
