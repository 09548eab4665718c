// An end of a stick is called one, and what only touches is not told as an overlap of nothing.
#include <catch2/catch.hpp>

#include "adapt/candidate.h"
#include "design/piece.h"

using namespace nook;

namespace {

// What a step on the left of a piece of that stock is called.
std::string side_of(StockKind kind) {
  Design design;
  Stock stock;
  stock.kind = kind;
  stock.thickness = {20};
  design.stock.push_back(stock);
  Part part;
  part.name = "leg";
  part.outline = {{0, 0}, {900, 0}, {900, 60}, {0, 60}};
  design.parts.push_back(part);
  FitAnswer answer;
  answer.pieces = pieces_of(design);
  const Survey survey;
  const Workbench bench{survey, design, answer, usual_rounding(Unit::mm)};
  const Ladder ladder = edge_set_out(bench, {}, 0, EdgeSide::left, {{5}, 0});
  return std::get<RunSetOut>(ladder.steps.at(0).steps.at(0)).side;
}

}  // namespace

TEST_CASE("adapt: lumber has ends, a panel has sides") {
  CHECK(side_of(StockKind::lumber) == "its left end");
  CHECK(side_of(StockKind::plywood) == "its left side");
}

TEST_CASE("adapt: a depth that prints as nothing is told as a touch") {
  FitAnswer answer;
  ClashFit clash;
  clash.part = "beam";
  clash.with = "left wall";
  clash.verdict = Verdict::cannot_tell;
  clash.depth_mm = 0.2;
  clash.most_mm = 3;
  answer.clashes.push_back(clash);
  const Rounding mm = usual_rounding(Unit::mm);
  CHECK(findings_of(answer, mm).at(0).text ==
        "beam and the left wall touch, and may overlap by up to 3 mm");
}
