// Screws clear of pipes, boxes and the runs of their cables.
#include <catch2/catch.hpp>

#include "fasten/bench.h"

using namespace nook;

TEST_CASE("holes: a pipe in the stud's place takes its places away") {
  Bench bench = two_studs();
  Obstacle pipe = obstacle(ObstacleKind::pipe, "pipe", 31, 32);
  pipe.out[0] = inches(-3);
  pipe.out[1] = inches(-1);
  pipe.height[1] = Height{inches(90), false, {}};
  bench.survey.walls[0].obstacles.push_back(pipe);
  const DrillAnswer answer = bench.drilled();
  REQUIRE(answer.walls[0].holes.size() == 2);
  for (const Hole& h : answer.walls[0].holes) CHECK(*h.stud == 0);
}

TEST_CASE("holes: a pipe of which nothing says how far out it is runs in the wall") {
  Bench bench = two_studs();
  Obstacle pipe = obstacle(ObstacleKind::pipe, "pipe", 31, 32);
  pipe.out[0] = pipe.out[1] = {};
  pipe.height[1] = Height{inches(90), false, {}};
  bench.survey.walls[0].obstacles.push_back(pipe);
  const DrillAnswer hidden = bench.drilled();
  REQUIRE(hidden.walls[0].holes.size() == 2);
  for (const Hole& h : hidden.walls[0].holes) CHECK(*h.stud == 0);
  bench.survey.walls[0].obstacles[0].out[1] = inches(1.25);  // on the wall
  CHECK(bench.drilled().walls[0].holes.size() == 4);
}

TEST_CASE("holes: a stud that carries a box takes shallow screws, with a caution, no deep ones") {
  Bench bench = two_studs();
  bench.survey.walls[0].obstacles.push_back(
      obstacle(ObstacleKind::outlet, "outlet", 32 + 3.0 / 16, 34));
  DrillAnswer answer = bench.drilled();
  REQUIRE(answer.walls[0].holes.size() == 4);
  CHECK(warns(answer.walls[0].holes[2], "the cable of the outlet"));
  CHECK_FALSE(warns(answer.walls[0].holes[0], "outlet"));
  bench.design.fastenings[0].screw.head_below = inches(1.0 / 8);  // 1 3/8 deep
  answer = bench.drilled();
  REQUIRE(answer.walls[0].holes.size() == 2);
  CHECK(*answer.walls[0].holes[0].stud == 0);
  REQUIRE(answer.walls[0].pieces[0].notes.size() == 1);
  CHECK(answer.walls[0].pieces[0].notes[0] ==
        "the stud 31 3/8\" from the corner gets no screw: the cable of the outlet may be in it; "
        "a screw no deeper than 1 1/4\" in the stud would do");
}

TEST_CASE("holes: a cable runs level from box to box, round the corner too") {
  Bench bench = two_studs();
  bench.design.fastenings[0].screw.head_below = inches(1.0 / 8);
  for (double left : {20.0, 60.0}) {
    Obstacle box = obstacle(ObstacleKind::switch_box, "switch", left, left + 2);
    box.height[0] = Height{inches(37), false, {}};
    box.height[1] = Height{inches(40), false, {}};
    bench.survey.walls[0].obstacles.push_back(box);
  }
  DrillAnswer answer = bench.drilled();
  REQUIRE(answer.walls[0].holes.size() == 2);
  CHECK(*answer.walls[0].holes[0].stud == 0);
  // The second switch moved to the other wall: the run now passes the first stud.
  bench.survey.walls[1].obstacles.push_back(bench.survey.walls[0].obstacles.back());
  bench.survey.walls[0].obstacles.pop_back();
  answer = bench.drilled();
  REQUIRE(answer.walls[0].holes.size() == 2);
  CHECK(*answer.walls[0].holes[0].stud == 1);
}
