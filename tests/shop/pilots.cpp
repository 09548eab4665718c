// Holes for screws on the cutting list: each on its own piece, from its own end and edge.
#include <catch2/catch.hpp>

#include "sample.h"
#include "shop/cut.h"

using namespace nook;
using namespace nook::sample;
using Catch::WithinAbs;

namespace {

Hole hole(const std::string& id, const std::string& part, double from_end, double from_edge) {
  Hole made;
  made.id = id, made.part = part;
  made.end = "left", made.edge = "top";
  made.from_end_mm = in(from_end), made.from_edge_mm = in(from_edge);
  made.clearance_mm = in(3. / 16);
  made.probe_first = id == "left 2";
  return made;
}

// Two rungs alike and a ledger; the ledger is screwed to a wall, a rung to the ledger.
struct Rack {
  Drawn drawn;
  FitAnswer fit;
  DrillAnswer drill;

  Rack() {
    drawn.piece("ledger", rectangle(in(46), in(3)));
    Part& rung = drawn.piece("rung", rectangle(in(14), in(3)));
    rung.repeat = Repeat{2, {0, 0, in(10)}};
    fit = as_drawn(drawn.design);
    drill.walls.resize(1);
    drill.walls[0].holes = {hole("left 1", "ledger", 8, 0.5), hole("left 2", "ledger", 24, 1)};
    drill.parts.resize(1);
    drill.parts[0].part = "rung 2", drill.parts[0].to = "ledger";
    drill.parts[0].holes = {hole("rung 2 1", "rung 2", 3, 1.5)};
  }
  std::vector<CutPiece> cut_list() const { return cut({drawn.design, fit, &drill}).pieces; }
};

const CutPiece& named(const std::vector<CutPiece>& all, const std::string& part) {
  for (const CutPiece& piece : all)
    if (piece.part == part) return piece;
  FAIL("no " << part);
  return all[0];
}

}  // namespace

TEST_CASE("pilots: each piece lists its own holes, from end and edge, with what to bore") {
  const auto all = Rack().cut_list();
  const CutPiece& ledger = named(all, "ledger");
  REQUIRE(ledger.pilots.size() == 2);
  CHECK(ledger.pilots[0].id == "left 1");
  CHECK(ledger.pilots[0].end == "left");
  CHECK(ledger.pilots[0].edge == "top");
  CHECK_THAT(ledger.pilots[0].from_end_mm, WithinAbs(in(8), 1e-9));
  CHECK_THAT(ledger.pilots[0].from_edge_mm, WithinAbs(in(0.5), 1e-9));
  CHECK_THAT(ledger.pilots[0].bore_mm, WithinAbs(in(3. / 16), 1e-9));
  CHECK_FALSE(ledger.pilots[0].probe_first);
  CHECK(ledger.pilots[1].probe_first);
}

TEST_CASE("pilots: a copy with a hole of its own is not cut with the ones without") {
  const auto all = Rack().cut_list();
  REQUIRE(all.size() == 3);
  CHECK(named(all, "rung 1").pilots.empty());
  CHECK(named(all, "rung 2").pilots.size() == 1);
}

TEST_CASE("pilots: copies bored alike are one entry, half a millimeter apart they are two") {
  Rack rack;
  rack.drill.parts.push_back({"rung 1", "ledger", {hole("rung 1 1", "rung 1", 3, 1.5)}});
  CHECK(rack.cut_list().size() == 2);
  CHECK(named(rack.cut_list(), "rung").names.size() == 2);
  rack.drill.parts[1].holes[0].from_edge_mm += 0.6;
  CHECK(rack.cut_list().size() == 3);
}
