// The studs that the room's answer lists, and edges that cannot both be right.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "fasten/bench.h"

using namespace nook;

TEST_CASE("found studs: exact edges give exact centres, counted from the real corner") {
  Bench bench;
  bench.room.walls[1].lean = .004;
  for (double centre : {15.25, 31.25}) {
    StudFound& f = bench.nailed(0, centre);
    f.left_edge[0].sd = f.right_edge[0].sd = millimetres(.0001);
  }
  const auto studs = studs_of(bench.survey, bench.room)[0];
  REQUIRE(studs.size() >= 2);
  CHECK(studs[0].found == StudReport::Found::edges);
  CHECK_THAT(studs[0].centre_mm, Catch::WithinAbs(inches(15.25).mm, .01));
  CHECK_THAT(studs[1].centre_mm, Catch::WithinAbs(inches(31.25).mm, .01));
  CHECK_THAT(studs[0].height_mm, Catch::WithinAbs(inches(38).mm, 1e-6));
  CHECK(studs[0].sd_mm < .01);
}

TEST_CASE("found studs: how sure each is, the tape's share included") {
  Bench bench;
  bench.nailed(0, 15.25);
  bench.found_centre(0, 31.25);
  const auto studs = studs_of(bench.survey, bench.room)[0];
  // Two nailed edges of 1 mm, and a class II tape's 0.5 mm over root 3 in the first metre.
  CHECK_THAT(studs[0].sd_mm, Catch::WithinAbs(std::hypot(std::sqrt(.5), .5 / std::sqrt(3.0)), .01));
  CHECK(studs[1].found == StudReport::Found::centre);
  CHECK_THAT(studs[1].sd_mm, Catch::WithinAbs(std::hypot(3 * std::sqrt(2.0), .29), .1));
  CHECK(studs[2].found == StudReport::Found::inferred);
  CHECK_THAT(studs[2].centre_mm, Catch::WithinAbs(inches(47.25).mm, 3));
  CHECK(studs[2].sd_mm > 3);
}

TEST_CASE("found studs: looks at two heights are one stud") {
  Bench bench;
  bench.nailed(0, 15.25).height = Height{inches(8), false, {}};
  bench.nailed(0, 15.5).height = Height{inches(60), false, {}};
  bench.survey.walls[0].studs->spacing.reset();
  const auto studs = studs_of(bench.survey, bench.room)[0];
  CHECK(studs[0].found == StudReport::Found::edges);
  CHECK_THAT(studs[0].centre_mm, Catch::WithinAbs(inches(15.375).mm, .2));
  CHECK((studs.size() == 1 || studs[1].found == StudReport::Found::inferred));
}

TEST_CASE("found studs: a height from the level line counts from it") {
  Bench bench;
  bench.nailed(0, 15.25).height = Height{inches(2), true, {}};
  CHECK_THAT(studs_of(bench.survey, bench.room)[0][0].height_mm,
             Catch::WithinAbs(inches(40).mm, 1e-6));
}

TEST_CASE("found studs: edges a stud's width apart, or two, agree; others are suspects") {
  Bench bench;
  bench.nailed(0, 15.25);
  bench.nailed(0, 31.25).right_edge[0].value = inches(31.25 + 2.25);  // a doubled stud, 3 in
  CHECK(stud_suspects(bench.survey).empty());
  StudFound& wrong = bench.nailed(0, 47.25);
  wrong.right_edge[0].value = inches(49);  // an inch too far
  const auto suspects = stud_suspects(bench.survey);
  REQUIRE(suspects.size() == 1);
  CHECK(suspects[0].ids == std::vector<std::string>{wrong.left_edge[0].id, wrong.right_edge[0].id});
  CHECK(suspects[0].reason.find("2 1/2\" apart") != std::string::npos);
  CHECK(suspects[0].odds > 10);
  CHECK_THAT(suspects[0].likely_mm, Catch::WithinAbs(inches(47.5).mm, 1e-6));
  wrong.right_edge[0].struck = true;
  CHECK(stud_suspects(bench.survey).empty());
}

TEST_CASE("found studs: a finder's edges may stray further than a nail's") {
  Bench bench;
  StudFound& f = bench.nailed(0, 15.25);
  f.right_edge[0].value = millimetres(f.left_edge[0].value.mm + 38.1 + 6);
  CHECK(stud_suspects(bench.survey).size() == 1);  // 6 mm against 3 x 1.41
  f.by = FoundBy::finder;
  CHECK(stud_suspects(bench.survey).empty());  // 6 mm against 3 x 4
}

TEST_CASE("found studs: a struck reading of an edge does not part the stud") {
  Bench bench;
  StudFound& found = bench.nailed(0, 15.25);
  Reading slip = reading(4.5, "slip");
  slip.struck = true;
  found.left_edge.insert(found.left_edge.begin(), slip);
  bench.ledger(0, "ledger", {0, 30}, 37);
  bench.screws("ledger", "left wall");
  const auto& studs = bench.drilled().walls[0].studs;
  REQUIRE_FALSE(studs.empty());
  CHECK(std::count_if(studs.begin(), studs.end(), [](const StudReport& stud) {
          return stud.found != StudReport::Found::inferred;
        }) == 1);
}

TEST_CASE("found studs: blocking behind a part of the piece takes its screws there") {
  Bench bench;
  bench.nailed(0, 63.25);
  bench.survey.walls[0].studs->spacing = {};
  Blocking block;
  block.along[0] = reading(20, "from").value;
  block.along[1] = reading(40, "to").value;
  block.height[0] = Height{inches(38.5), false, {}};  // the ledger goes from 38 to 41
  block.height[1] = Height{inches(49), false, {}};
  bench.survey.walls[0].studs->blocking.push_back(block);
  bench.ledger(0, "ledger", {22, 16}, 38);
  bench.screws("ledger", "left wall");
  const auto& holes = bench.drilled().walls[0].holes;
  REQUIRE(holes.size() == 2);
  for (const Hole& h : holes) {
    CHECK(h.height_mm > inches(38.5).mm + 12);
    CHECK(h.height_mm < inches(41).mm - 10);
  }
}
