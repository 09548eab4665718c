// Screws from piece to piece: on faces, into edges, out of ends, and out of the other side.
#include <catch2/catch.hpp>

#include "fasten/bench.h"
#include "fasten/joint.h"

using namespace nook;

namespace {

// A ledger and a 3/4 plywood deck lying on its upper edge, flush with the wall.
Bench deck_on_ledger() {
  Bench bench;
  bench.ledger(0, "ledger", {0, 46}, 37);
  Stock ply;
  ply.name = "ply";
  ply.thickness = inches(.75);
  bench.design.stock.push_back(ply);
  Part deck;
  deck.name = deck.group = "deck";
  deck.stock = 1;
  deck.outline = {{0, 0}, {inches(46).mm, 0}, {inches(46).mm, inches(30).mm}, {0, inches(30).mm}};
  deck.place_in_room = {{0, 0, inches(40).mm}, {1, 0, 0}, {0, 1, 0}, {}, {}};
  bench.design.parts.push_back(deck);
  bench.screws("deck", "ledger").screw.length = inches(2);
  return bench;
}

}  // namespace

TEST_CASE("joints: a deck is screwed down along the middle of the ledger's edge") {
  const DrillAnswer answer = deck_on_ledger().drilled();
  REQUIRE(answer.parts.size() == 1);
  const JointDrill& joint = answer.parts[0];
  CHECK(joint.part == "deck");
  CHECK(joint.to == "ledger");
  REQUIRE(joint.holes.size() == 4);  // 46 in: one every 12 in, both ends
  for (const Hole& h : joint.holes) {
    CHECK_THAT(h.v_mm, Catch::WithinAbs(inches(.625).mm, inches(1.0 / 32).mm));
    CHECK_THAT(h.embedment_mm, Catch::WithinAbs(inches(1.25).mm, 1e-9));
    CHECK(h.edge == "bottom");
    CHECK(h.hit_chance > .999);
  }
  CHECK(answer.unreachable.empty());
}

TEST_CASE("joints: holes count from a side that is not scribed where there is one") {
  Bench bench = deck_on_ledger();
  Contact scribed;
  scribed.part = "deck", scribed.edge = EdgeSide::bottom, scribed.edge_given = "bottom";
  scribed.meets = "left wall", scribed.by = Fitting::scribe;
  bench.design.contacts.push_back(scribed);
  const DrillAnswer from_top = bench.drilled();
  REQUIRE(from_top.parts.size() == 1);
  for (const Hole& h : from_top.parts[0].holes) {
    CHECK(h.edge == "top");
    CHECK_THAT(h.from_edge_mm, Catch::WithinAbs(inches(30).mm - h.v_mm, 1e-9));
    CHECK_THAT(h.v_mm, Catch::WithinAbs(inches(.625).mm, inches(1.0 / 32).mm));
  }
  scribed.edge = EdgeSide::top, scribed.edge_given = "top";  // both: the nearer one after all
  bench.design.contacts.push_back(scribed);
  const DrillAnswer from_bottom = bench.drilled();
  REQUIRE(from_bottom.parts.size() == 1);
  for (const Hole& h : from_bottom.parts[0].holes) CHECK(h.edge == "bottom");
}

TEST_CASE("joints: a screw that comes out of the other side is refused") {
  Bench bench = deck_on_ledger();
  bench.design.fastenings[0].screw.length = inches(4);
  const DrillAnswer answer = bench.drilled();
  CHECK(answer.parts.empty());
  REQUIRE(answer.unreachable.size() == 1);
  INFO(answer.unreachable[0].reason);
  CHECK(answer.unreachable[0].reason.find("far side") != std::string::npos);
  // 3 in of ledger under 3/4 of deck: 3 3/4 less a sixteenth.
  CHECK(answer.unreachable[0].advice == "use one of 3 1/2\" at most");
  CHECK(answer.verdict == Verdict::does_not_fit);
}

TEST_CASE("joints: pieces that do not meet are said so") {
  Bench bench = deck_on_ledger();
  bench.design.parts[1].place_in_room.at.z = inches(50).mm;
  const DrillAnswer answer = bench.drilled();
  REQUIRE(answer.unreachable.size() == 1);
  CHECK(answer.unreachable[0].reason.find("no face of it lies on ledger: ") == 0);
  bench.design.parts[1].place_in_room.at.z = inches(41).mm;
  CHECK(bench.drilled().unreachable[0].reason.find("no face of it lies on ledger, 1\" away") == 0);
}

TEST_CASE("joints: into the edge of thin plywood the screw keeps to its middle, with a caution") {
  Bench bench = deck_on_ledger();
  Part& ledger = bench.design.parts[0];
  ledger.stock = 1;  // a 3/4 ledger: narrower than 5 D
  const DrillAnswer answer = bench.drilled();
  REQUIRE(answer.parts.size() == 1);
  const Hole& h = answer.parts[0].holes[0];
  CHECK_THAT(h.v_mm, Catch::WithinAbs(inches(.375).mm, inches(1.0 / 32).mm));
  REQUIRE_FALSE(h.warnings.empty());
  CHECK(h.warnings[0].find("pre-bore") != std::string::npos);
}

TEST_CASE("joints: a load down on a screwed-down deck is carried by the wood") {
  Bench bench = deck_on_ledger();
  bench.design.fastenings[0].load_n = 1000;
  DrillAnswer answer = bench.drilled();
  REQUIRE(answer.strength.size() == 1);
  REQUIRE(answer.strength[0].ratio);
  CHECK(*answer.strength[0].ratio == 0);
  // Hung from above instead, the screws are pulled: withdrawal, and the load shared by four.
  bench.design.parts[1].place_in_room.at.z = inches(37).mm - inches(.75).mm;
  bench.design.fastenings[0].face = PieceFace::front;
  answer = bench.drilled();
  REQUIRE(answer.strength.size() == 1);
  CHECK(answer.strength[0].mode == "withdrawal");
  CHECK_THAT(answer.strength[0].worst_load_n, Catch::WithinAbs(250, 1e-9));
}

TEST_CASE("joints: as many screws as are advised fit and carry the load") {
  Bench bench = deck_on_ledger();
  bench.design.parts[1].place_in_room.at.z = inches(37).mm - inches(.75).mm;
  Fastening& f = bench.design.fastenings[0];
  f.face = PieceFace::front;
  f.load_n = 100;
  f.load_n = 1.4 * *bench.drilled().strength[0].capacity_n;
  const std::string advice = bench.drilled().strength[0].advice.front();
  CAPTURE(advice);
  const std::size_t end = advice.find(" screws in place of 4");
  REQUIRE(end != std::string::npos);
  f.per_stud = std::stoi(advice.substr(advice.rfind(' ', end - 1)));
  const DrillAnswer answer = bench.drilled();
  CHECK(answer.parts[0].holes.size() == static_cast<std::size_t>(f.per_stud));
  CHECK(*answer.strength[0].ratio <= 1);
  f.load_n = 10 * *f.load_n;
  CHECK(bench.drilled().strength[0].advice.front().find("in place of") == std::string::npos);
}

TEST_CASE("joints: pocket screws leave through the end, side by side, without a figure") {
  Bench bench;
  Part& rail = bench.ledger(0, "rail", {0, 46}, 37);
  rail.place_in_room = {{0, 0, 0}, {0, 0, 1}, {0, -1, 0}, {}, {}};  // upright, front towards +x
  Part rung = rail;
  rung.name = rung.group = "rung";
  rung.outline = {
      {0, 0}, {inches(14).mm, 0}, {inches(14).mm, inches(1.25).mm}, {0, inches(1.25).mm}};
  rung.place_in_room = {
      {inches(1.25).mm, -inches(2).mm, inches(9).mm}, {1, 0, 0}, {0, 1, 0}, {}, {}};
  bench.design.parts.push_back(rung);
  Fastening& f = bench.screws("rung", "rail");
  f.screw = {8, {}, inches(1.5), ScrewKind::pocket, {}, {}, "", {}};
  DrillAnswer answer = bench.drilled();
  REQUIRE(answer.parts.size() == 1);
  REQUIRE(answer.parts[0].holes.size() == 2);
  for (const Hole& h : answer.parts[0].holes) {
    CHECK(h.u_mm == 0);
    CHECK(h.edge == "left");
    CHECK(h.embedment_mm < inches(.75).mm);
  }
  CHECK(answer.strength.empty());
  bench.design.fastenings[0].load_n = 300;
  answer = bench.drilled();
  REQUIRE(answer.strength.size() == 1);
  CHECK_FALSE(answer.strength[0].capacity_n);
  CHECK(answer.verdict == Verdict::cannot_tell);
}

TEST_CASE("joints: a section across a piece is its outline, along it a row of rectangles") {
  Bench bench = deck_on_ledger();
  const auto pieces = pieces_of(bench.design);
  const Piece& ledger = pieces[0];
  const CutPlane across{{0, inches(.5).mm, 0}, {1, 0, 0}, {0, 0, 1}, {0, 1, 0}};
  CHECK_THAT(area(section_of(ledger, ledger.frame, across)),
             Catch::WithinAbs(inches(46).mm * inches(3).mm, 1e-3));
  const CutPlane level{{0, 0, inches(38).mm}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
  CHECK_THAT(area(section_of(ledger, ledger.frame, level)),
             Catch::WithinAbs(inches(46).mm * inches(1.25).mm, 1e-3));
  const CutPlane beside{{0, 0, inches(50).mm}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
  CHECK(section_of(ledger, ledger.frame, beside).empty());
}

TEST_CASE("joints: one screw alone stands in the middle of where the pieces meet") {
  Bench bench = deck_on_ledger();
  Part& deck = bench.design.parts[1];
  for (Vec2& p : deck.outline) p.x = std::min(p.x, inches(4).mm);
  bench.design.fastenings[0].per_stud = 1;
  const DrillAnswer answer = bench.drilled();
  REQUIRE(answer.parts.size() == 1);
  REQUIRE(answer.parts[0].holes.size() == 1);
  CHECK_THAT(answer.parts[0].holes[0].u_mm, Catch::WithinAbs(inches(2).mm, inches(1.0 / 16).mm));
}

TEST_CASE("joints: one fastening into several copies counts from one end of the piece") {
  Bench bench = deck_on_ledger();
  Part& ledger = bench.design.parts[0];
  for (Vec2& p : ledger.outline) p.x = std::min(p.x, inches(4).mm);
  ledger.place_in_room.at.x = inches(8).mm;
  ledger.repeat = Repeat{4, {inches(12).mm, 0, 0}};
  const DrillAnswer answer = bench.drilled();
  REQUIRE(answer.parts.size() == 4);
  for (const JointDrill& joint : answer.parts)
    for (const Hole& h : joint.holes) {
      CHECK(h.end == answer.parts[0].holes[0].end);
      CHECK(h.into == joint.to);
    }
}

TEST_CASE("joints: no hole counts from an end that is cut slanted") {
  Bench bench = deck_on_ledger();
  Part& deck = bench.design.parts[1];
  Part& ledger = bench.design.parts[0];
  for (Vec2& p : ledger.outline) p.x = std::min(p.x, inches(10).mm);
  ledger.place_in_room.at.x = inches(40).mm;  // 30 to 40 of 46: nearer to the right end
  for (const Hole& h : bench.drilled().parts.at(0).holes) CHECK(h.end == "right");
  deck.outline[1].x += inches(3).mm;  // its right end runs to a tip
  for (const Hole& h : bench.drilled().parts.at(0).holes) CHECK(h.end == "left");
}

TEST_CASE("joints: a piece bored beforehand is not to be bored again, and a short screw is told") {
  Bench bench = deck_on_ledger();
  bench.design.parts[0].stock = 1;  // narrower than 5 D
  bench.design.fastenings[0].prebored = true;
  const DrillAnswer bored = bench.drilled();
  CHECK(bored.parts.at(0).holes[0].warnings.at(0).find("pre-bore,") == std::string::npos);
  bench.design.fastenings[0].prebored = false;
  CHECK(warns(bench.drilled().parts.at(0).holes[0], "pre-bore,"));
  bench.design.fastenings[0].screw.length = inches(1.5);
  // 3/4 in the wood, 6 D of a #10 are 1.14: 0.39 longer, to the next sixteenth.
  CHECK(warns(bench.drilled().parts.at(0).holes[0], "use one of 2\""));
}

TEST_CASE("joints: one screw under a load beside it is not sent to a stud") {
  Bench bench;
  bench.ledger(0, "rail", {0, 46}, 37);
  Part rung = bench.design.parts[0];
  rung.name = rung.group = "post";
  rung.outline = {{0, 0}, {inches(3).mm, 0}, {inches(3).mm, inches(3).mm}, {0, inches(3).mm}};
  rung.place_in_room.at = {inches(10).mm, inches(1.25).mm, inches(37).mm};
  bench.design.parts.push_back(rung);
  Fastening& f = bench.screws("rail", "post");
  f.per_stud = 1, f.load_n = 400, f.screw.length = inches(2);
  const Strength s = bench.drilled().strength.at(0);
  CHECK(s.mode == "one screw and a load beside it: the piece turns about it");
  REQUIRE_FALSE(s.advice.empty());
  CHECK(s.advice[0].find("stud") == std::string::npos);
}
