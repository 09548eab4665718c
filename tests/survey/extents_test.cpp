// What is struck does not say how far a wall goes.
#include <catch2/catch.hpp>

#include "survey/extents.h"
#include "survey_builder.h"

using namespace nook;
using nook::test::SurveyBuilder;

namespace {

// One entry of each kind 5 m along, each with its own wall's only far reading.
Survey far_readings(bool struck) {
  SurveyBuilder b;
  b.diagonal(0, 5000, 1200, {5200}).level(0, 5000, 100, 1300, 3);
  b.plumb(0, 5000, {{100, 20}, {9000, 25}}).string(0, 8000, {{100, 20}, {5000, 25}});
  b.straightedge(0, 8000, {{100, 0}, {5000, 0}}).drop(0, 5000, 100, 1000).rise(0, 5000, 100, 8000);
  Wall& wall = b.survey.walls[0];
  wall.studs.emplace().found.emplace_back().centre = {b.reading(5000, "centre")};
  wall.levels[0].gap[0].struck = struck;
  for (Station& station : wall.plumbs[0].line) station.reading[0].struck = struck;
  for (Station& station : wall.strings[0].line) station.reading[0].struck = struck;
  for (Station& station : wall.straightedges[0].gaps) station.reading[0].struck = struck;
  wall.studs->found[0].centre[0].struck = struck;
  b.survey.corners[0].diagonals[0].straight[0].struck = struck;
  b.survey.floor.down[0].drop[0].struck = struck;
  b.survey.ceiling[0].drop[0].struck = struck;
  return b.survey;
}

}  // namespace

TEST_CASE("extents: struck marks, studs, heights and lines do not set how far a wall goes") {
  CHECK(farthest_on(far_readings(false), 0) == 5000);
  CHECK(farthest_on(far_readings(true), 0) == 0);
  CHECK(wall_extent(far_readings(false), 0, 1000).high.y >= 9000);
  CHECK(wall_extent(far_readings(true), 0, 1000).high.y < 3000);
}

TEST_CASE("extents: each struck kind by itself") {
  for (int kind = 0; kind < 8; ++kind) {
    INFO(kind);
    Survey survey = far_readings(true);
    Wall& wall = survey.walls[0];
    if (kind == 0) wall.levels[0].gap[0].struck = false;
    if (kind == 1) wall.plumbs[0].line[1].reading[0].struck = false;
    if (kind == 2) wall.strings[0].line[1].reading[0].struck = false;
    if (kind == 3) wall.straightedges[0].gaps[1].reading[0].struck = false;
    if (kind == 4) wall.studs->found[0].centre[0].struck = false;
    if (kind == 5) survey.corners[0].diagonals[0].straight[0].struck = false;
    if (kind == 6) survey.floor.down[0].drop[0].struck = false;
    if (kind == 7) survey.ceiling[0].drop[0].struck = false;
    CHECK(farthest_on(survey, 0) == 5000);
  }
}
