// Cautions at a hole and at a stud: said where they hold, not beside it.
#include <catch2/catch.hpp>

#include "fasten/bench.h"

using namespace nook;

namespace {

// A ledger whose end stands so far (in) from the stud at 15 5/16, its screws not pre-bored.
DrillAnswer not_bored(double from_end, int per_stud) {
  Bench bench = two_studs();
  bench.design.parts.clear();
  bench.ledger(0, "ledger", {15 + 5. / 16 - from_end, 40}, 37);
  bench.design.fastenings[0].prebored = false;
  bench.design.fastenings[0].per_stud = per_stud;
  return bench.drilled();
}

bool any_warns(const DrillAnswer& answer, int stud, const std::string& words) {
  for (const Hole& hole : answer.walls[0].holes)
    if (hole.stud == stud && warns(hole, words)) return true;
  return false;
}

// A stud nailed at 15 1/4 low down and so much further along 80 in higher up.
std::string note_of_lean(double further) {
  Bench bench = two_studs();
  Studs& studs = *bench.survey.walls[0].studs;
  studs.found.clear();
  bench.nailed(0, 15.25).height = Height{inches(8), false, {}};
  bench.nailed(0, 15.25 + further).height = Height{inches(88), false, {}};
  const DrillAnswer answer = bench.drilled();
  std::string all;
  for (const std::string& note : answer.walls[0].stud_notes) all += note + "\n";
  return all;
}

}  // namespace

TEST_CASE("cautions: nearer to the end than 15 D a screw wants a pilot hole") {
  // NDS commentary C12.1.5.7 (from memory): 15 D is 2.85 in of a #10; a stud's middle half in.
  CHECK(any_warns(not_bored(2.3, 1), 0, "pre-bore: it is near the end of the piece"));
  CHECK_FALSE(any_warns(not_bored(3.6, 1), 0, "pre-bore"));
}

TEST_CASE("cautions: two screws in a 3 in ledger stand closer than 15 D, one alone does not") {
  // 3 in less 2.5 D at both edges leave 2.05 between the two, under 2.85.
  CHECK(any_warns(not_bored(8, 2), 0, "pre-bore: the screws stand close"));
  CHECK_FALSE(any_warns(not_bored(8, 1), 0, "pre-bore"));
  Bench bored = two_studs();
  CHECK_FALSE(any_warns(bored.drilled(), 0, "pre-bore"));
}

TEST_CASE("cautions: a leaning stud is told with its way, a plumb one is not") {
  CHECK(note_of_lean(0.5).find("leans 5/16\" away from the corner in 48\" going up") !=
        std::string::npos);
  CHECK(note_of_lean(-0.5).find("toward the corner in 48\" going up") != std::string::npos);
  CHECK(note_of_lean(0).find("leans") == std::string::npos);
}
