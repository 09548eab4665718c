// The shopping list, counted by hand.
#include "shop/shopping.h"

#include <catch2/catch.hpp>

#include "sample.h"

using namespace nook;
using namespace nook::sample;
using Catch::WithinAbs;
using Kind = Purchase::Kind;

namespace {

// A shelf 30 by 12 with contacts, as drawn.
struct Shelf {
  Drawn drawn;
  FitAnswer fit;

  Shelf() { drawn.piece("shelf", rectangle(in(30), in(12))); }

  void meets(EdgeSide edge, Fitting by, double gap) {
    drawn.design.contacts.reserve(8);
    Contact how;
    how.part = "shelf", how.edge = edge, how.by = by, how.meets = "left wall";
    if (by == Fitting::trim) how.trim = inches(0.75);
    drawn.design.contacts.push_back(how);
    if (fit.pieces.empty()) fit = as_drawn(drawn.design);
    ContactFit found;
    found.how = &drawn.design.contacts.back();
    found.part = "shelf", found.meets = "left wall";
    found.gap.most = gap;
    fit.contacts.push_back(found);
  }
  std::vector<Purchase> list(const DrillAnswer* drill = nullptr) const {
    return shopping(drawn.design, fit, drill);
  }
};

Screw screw(ScrewKind kind, double gauge, double length) {
  Screw made;
  made.kind = kind, made.gauge = gauge, made.length = inches(length);
  return made;
}

Hole hole_of(int fastening) {
  Hole hole;
  hole.fastening = fastening;
  return hole;
}

}  // namespace

TEST_CASE("shopping: screws of one kind and length are one line, on walls and in joints together") {
  Shelf shelf;
  shelf.fit = as_drawn(shelf.drawn.design);
  for (const Screw& one :
       {screw(ScrewKind::wood, 10, 3), screw(ScrewKind::wood, 10, 3), screw(ScrewKind::wood, 10, 2),
        screw(ScrewKind::pocket, 8, 1.5), screw(ScrewKind::structural, 0, 4)}) {
    Fastening fastening;
    fastening.screw = one;
    shelf.drawn.design.fastenings.push_back(fastening);
  }
  DrillAnswer drill;
  drill.walls.resize(2);
  drill.walls[0].holes = {hole_of(0), hole_of(0), hole_of(1)};
  drill.walls[1].holes = {hole_of(0)};
  drill.parts.resize(1);
  drill.parts[0].holes = {hole_of(1), hole_of(3), hole_of(3), hole_of(4)};
  const auto list = shelf.list(&drill);
  REQUIRE(list.size() == 3);  // fastening 2 got no hole, so no screw
  CHECK(list[0].name == "#10 wood screw");
  CHECK(list[0].count == 5);
  CHECK_THAT(list[0].length_mm, WithinAbs(in(3), 1e-9));
  CHECK((list[1].name == "#8 pocket screw" && list[1].count == 2));
  CHECK((list[2].name == "structural screw" && list[2].count == 1));
}

TEST_CASE("shopping: trim and caulk as long as their edge, filler and shims where a gap is left") {
  Shelf shelf;
  shelf.meets(EdgeSide::left, Fitting::trim, 0);
  shelf.meets(EdgeSide::bottom, Fitting::caulk, in(0.125));
  shelf.meets(EdgeSide::top, Fitting::filler, in(0.5));
  shelf.meets(EdgeSide::right, Fitting::shim, in(0.25));
  const auto list = shelf.list();
  REQUIRE(list.size() == 4);
  CHECK((list[0].kind == Kind::trim && list[1].kind == Kind::caulk));
  CHECK((list[2].kind == Kind::filler && list[3].kind == Kind::shim));
  CHECK_THAT(list[0].length_mm, WithinAbs(in(12), 1e-9));
  CHECK_THAT(list[0].width_mm, WithinAbs(in(0.75), 1e-9));
  CHECK_THAT(list[1].length_mm, WithinAbs(in(30), 1e-9));
  CHECK_THAT(list[2].width_mm, WithinAbs(in(0.5), 1e-9));
  CHECK_THAT(list[3].width_mm, WithinAbs(in(0.25), 1e-9));
  CHECK(list[0].name == "shelf at the left wall");
}

TEST_CASE(
    "shopping: no filler and no shim into a gap under half a millimeter, no blade for a butt") {
  Shelf shelf;
  shelf.meets(EdgeSide::top, Fitting::filler, 0.4);
  shelf.meets(EdgeSide::right, Fitting::shim, 0.4);
  shelf.meets(EdgeSide::left, Fitting::butt, in(0.1));
  CHECK(shelf.list().empty());
}

TEST_CASE("shopping: a blade for each scribe and each notch") {
  Shelf shelf;
  shelf.meets(EdgeSide::left, Fitting::scribe, in(0.25));
  shelf.fit.notches.resize(2);
  const auto list = shelf.list();
  REQUIRE(list.size() == 1);
  CHECK(list[0].kind == Kind::scribe_blade);
  CHECK(list[0].count == 3);
}
