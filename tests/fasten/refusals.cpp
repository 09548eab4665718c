// Where no screw goes or no figure is had, and the reason that is told.
#include <catch2/catch.hpp>

#include "fasten/bench.h"

using namespace nook;

namespace {

// One ledger on studs nailed at 15 5/16 and 31 3/8.
Bench ledger_at(Along place) {
  Bench bench = two_studs();
  bench.design.parts.clear();
  bench.ledger(0, "ledger", place, 37);
  return bench;
}

// A 3/4 panel of plywood 30 by 20 lying level, its lower face so high (in), from x, y on.
void lay(Bench& bench, const std::string& name, Vec2 at, double height) {
  if (bench.design.stock.size() == 1) {
    Stock ply;
    ply.name = "ply";
    ply.thickness = inches(.75);
    bench.design.stock.push_back(ply);
  }
  Part panel;
  panel.name = panel.group = name;
  panel.stock = 1;
  const double w = inches(30).mm, d = inches(20).mm;
  panel.outline = {{0, 0}, {w, 0}, {w, d}, {0, d}};
  panel.place_in_room = {
      {inches(at.x).mm, inches(at.y).mm, inches(height).mm}, {1, 0, 0}, {0, 1, 0}, {}, {}};
  bench.design.parts.push_back(panel);
}

// One panel on another, screwed down with screws so long (in).
Bench stacked(double length, Vec2 over = {}) {
  Bench bench;
  lay(bench, "lower", {}, 20);
  lay(bench, "upper", over, 20.75);
  bench.screws("upper", "lower").screw.length = inches(length);
  return bench;
}

std::string reason(const DrillAnswer& answer) {
  CHECK(answer.verdict == Verdict::does_not_fit);
  return answer.unreachable.empty() ? "" : answer.unreachable[0].reason;
}

}  // namespace

TEST_CASE("refusals: a piece that only touches the wall with its edge wants a cleat") {
  Bench bench;
  bench.nailed(0, 15.25);
  lay(bench, "deck", {}, 40);
  bench.screws("deck", "left wall");
  CHECK(reason(bench.drilled()) == "no face of it lies on the left wall");
  CHECK(bench.drilled().unreachable[0].advice == "fasten it by a cleat");
}

TEST_CASE("refusals: a stud nearer to the end than 10 D is told, one further in is taken") {
  // 10 D of a #10: 1.9, said as 1 15/16. From 15 to 27 the stud at 15 5/16 stands 5/16 in.
  const DrillAnswer near = ledger_at({15, 12}).drilled();
  CHECK(near.walls[0].holes.empty());
  CHECK(reason(near).find("the stud 15 5/16\" from the corner lies nearer than 1 15/16\" to its "
                          "end") == 0);
  const DrillAnswer inside = ledger_at({13.25, 12}).drilled();
  CHECK(inside.unreachable.empty());
  CHECK(inside.walls[0].holes.size() == 2);
}

TEST_CASE("refusals: no longer piece is offered for a stud that lies behind it already") {
  Bench bench = ledger_at({10, 12});  // the stud at 15 5/16 in its middle, 31 3/8 beyond it
  Part& ledger = bench.design.parts[0];
  const auto hole = [](double from, double to, double low, double high) {
    const double in = kMillimetresPerInch;
    return Polygon{
        {from * in, low * in}, {to * in, low * in}, {to * in, high * in}, {from * in, high * in}};
  };
  Cutout cutout;
  cutout.name = "outlet";
  cutout.outline = hole(3, 9, 0.25, 2.75);
  ledger.cutouts.push_back(cutout);
  const std::string why = reason(bench.drilled());
  CAPTURE(why);
  CHECK((why + bench.drilled().unreachable[0].advice).find("-") == std::string::npos);
}

TEST_CASE("refusals: one screw turns under a load beside it, two on one stud do not") {
  Bench bench = ledger_at({10, 12});  // its middle 11/16 beside the stud
  Fastening& f = bench.design.fastenings[0];
  f.load_n = 400, f.per_stud = 1;
  const Strength one = bench.drilled().strength.at(0);
  CHECK_FALSE(one.capacity_n);
  CHECK(one.mode == "one screw and a load beside it: the piece turns about it");
  REQUIRE(one.advice.size() == 1);
  CHECK(one.advice[0].find("give it two: at a second stud or blocking") == 0);
  f.per_stud = 2;
  CHECK(bench.drilled().strength.at(0).capacity_n);
}

TEST_CASE("refusals: a screw that ends in the upper piece does not reach the lower") {
  CHECK(reason(stacked(.75).drilled()) == "into lower, a 3/4\" screw does not reach it");
  CHECK(stacked(1.25).drilled().unreachable.empty());
}

TEST_CASE("refusals: where pieces share a strip narrower than a screw's edges need there is none") {
  CHECK(reason(stacked(1.25, {29.75, 0}).drilled()) ==
        "into lower, there is no room for a screw clear of edges, ends and cutouts");
}

TEST_CASE("refusals: wood thinner than 6 D of the screw gets no figure, whatever its length") {
  Bench bench = stacked(1.25);
  bench.design.fastenings[0].load_n = 400;
  bench.design.fastenings[0].pull_n = 100;
  const Strength thin = bench.drilled().strength.at(0);
  CHECK_FALSE(thin.capacity_n);
  REQUIRE_FALSE(thin.advice.empty());
  CHECK(thin.advice[0] == "the wood is only 3/4\" thick: use thinner screws, or bolt through");
}

TEST_CASE("refusals: a load that presses the pieces together is no load on the screws") {
  Bench bench = stacked(2.75);
  for (Stock& stock : bench.design.stock) stock.gravity = 0.5, stock.thickness = inches(1.5);
  bench.design.parts[1].place_in_room.at.z = inches(21.5).mm;
  Fastening& f = bench.design.fastenings[0];
  f.screw.gauge = 8;
  f.load_n = 400;
  const Strength s = bench.drilled().strength.at(0);
  CAPTURE(s.mode);
  REQUIRE(s.ratio);
  CHECK(*s.ratio == 0);
  CHECK(s.capacity_n);
  CHECK(s.notes.at(0).find("the load presses on what carries it") == 0);
}

TEST_CASE("refusals: where nobody looked for studs nothing says that none lies behind") {
  Bench bench;
  bench.nailed(0, 63.25);
  bench.survey.walls[0].studs->spacing = {};
  bench.ledger(0, "ledger", {8, 30}, 37);
  bench.screws("ledger", "left wall");
  const DrillAnswer alone = bench.drilled();
  CHECK(alone.verdict == Verdict::cannot_tell);
  CHECK(alone.unreachable.empty());
  REQUIRE(alone.missing.size() == 1);
  CHECK(alone.missing[0].what == "nothing says whether a stud lies behind ledger on the left wall");
  bench.survey.walls[0].studs->found[0].left_edge[0].struck = true;
  bench.survey.walls[0].studs->found[0].right_edge[0].struck = true;
  REQUIRE(bench.drilled().missing.size() == 1);
  CHECK(bench.drilled().missing[0].what == "nothing says where the studs of the left wall are");
}

TEST_CASE("refusals: what stands 20 in off its wall is moved, not screwed") {
  Bench bench = two_studs();
  bench.design.parts[0].place_in_room.at.y = inches(20).mm;
  const DrillAnswer answer = bench.drilled();
  CHECK(reason(answer) == "it stands 20\" off the left wall");
}
