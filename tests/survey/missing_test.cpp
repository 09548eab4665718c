// What is missing, in words, and what blocks.
#include <algorithm>
#include <catch2/catch.hpp>

#include "survey/adjustment.h"
#include "survey/first_values.h"
#include "survey/missing.h"
#include "survey_builder.h"

using namespace nook;
using nook::test::SurveyBuilder;

namespace {

bool says(const RoomReport& report, const std::string& what, bool blocks) {
  return std::any_of(report.missing.begin(), report.missing.end(),
                     [&](const Missing& m) { return m.what == what && m.blocks == blocks; });
}

}  // namespace

TEST_CASE("missing: an empty corner wants a diagonal, and a level on each wall") {
  const Adjustment adjusted = adjust(SurveyBuilder().survey);
  CHECK(!adjusted.complete());
  CHECK(says(adjusted.report(),
             "nothing says how the right wall stands: take one diagonal across the corner", true));
  CHECK(says(adjusted.report(),
             "nothing says how far the left wall leans: hold a level plumb against it", false));
  CHECK(!adjusted.expected_diagonal(0, 900, 1200, 1000));
  CHECK(room_verdict(adjusted.report()) == Verdict::cannot_tell);
}

TEST_CASE("missing: a lean that nothing says does not block") {
  SurveyBuilder b;
  b.diagonal(0, 900, 1200, {1500}).level(0, 500, 100, 1300, 3);
  const Adjustment adjusted = adjust(b.survey);
  CHECK(adjusted.complete());
  CHECK(adjusted.report().missing.size() == 1);
  CHECK(says(adjusted.report(),
             "nothing says how far the right wall leans: hold a level plumb against it", false));
}

TEST_CASE("missing: an alcove's back wall wants its length") {
  SurveyBuilder b({"left", "back", "right"});
  b.diagonal(0, 400, 500, {640}).diagonal(1, 400, 500, {640});
  for (int wall = 0; wall < 3; ++wall) b.level(wall, 300, 100, 1300, 2);
  const Adjustment adjusted = adjust(b.survey);
  CHECK(says(adjusted.report(),
             "nothing says how long the back wall is: measure it from corner to corner", true));
  b.length(1, {1200});
  CHECK(adjust(b.survey).complete());
}

TEST_CASE("missing: striking the only diagonal leaves the corner open") {
  SurveyBuilder b;
  b.diagonal(0, 900, 1200, {1500});
  b.survey.corners[0].diagonals[0].straight[0].struck = true;
  CHECK(!adjust(b.survey).complete());
}

TEST_CASE("a straightedge with two gaps says nothing and does no harm") {
  SurveyBuilder b;
  b.diagonal(0, 900, 1200, {1500}).straightedge(0, 900, {{100, 0}, {1300, 3}});
  for (const int wall : {0, 1}) b.level(wall, 500, 100, 1300, 2);
  const Adjustment adjusted = adjust(b.survey);
  CHECK(adjusted.complete());
  CHECK(adjusted.report().missing.empty());
  for (const ReadingReport& reading : adjusted.report().readings)
    if (reading.id.find("straightedge") != std::string::npos) {
      CHECK(reading.redundancy < 1e-6);
      CHECK(!reading.w);
      CHECK(!reading.smallest_slip_mm);
    }
}

TEST_CASE("missing: a gross slip in a net of marks is a slip, and no mark is missing") {
  // The rectangle of 3 m by 4 with both diagonals (5 m, Euclid I.47), one of them typed as 9 m: the
  // best fit is nearly a line, along which no tape holds a mark sideways.
  const auto net = [](double last) {
    SurveyBuilder b;
    b.survey.walls.clear(), b.survey.corners.clear();
    b.mark_named("A").mark_named("B").mark_named("C").mark_named("D");
    b.span("A", "B", {3000}).span("B", "C", {4000}).span("A", "C", {5000});
    b.span("C", "D", {3001}).span("A", "D", {4000}).span("B", "D", {last});
    return adjust(b.survey);
  };
  CHECK(net(5001).complete());
  const Adjustment slipped = net(9000);
  CHECK(slipped.report().missing.empty());
  REQUIRE(slipped.report().suspects.size() == 1);
  CHECK(slipped.report().suspects[0].ids == std::vector<std::string>{"span[5]"});
  CHECK(room_verdict(slipped.report()) == Verdict::cannot_tell);
  CHECK(!slipped.complete());
}

TEST_CASE("missing: readings that do not settle on one room are told, unless a slip explains it") {
  SurveyBuilder b;
  b.diagonal(0, 900, 1200, {1500}).level(0, 500, 100, 1300, 3).level(1, 500, 100, 1300, 3);
  const RoomModel model = room_model(std::make_shared<Survey>(b.survey), 0, 2);
  const Solution settled = solve(model, rows_in_use(model), first_state(model));
  REQUIRE(settled.converged);
  CHECK(missing(model, settled, settled).empty());
  Solution open = settled;
  open.converged = false;
  const std::vector<Missing> told = missing(model, open, open);
  REQUIRE(told.size() == 1);
  CHECK(told[0].what.starts_with("the readings do not settle on one room: take again"));
  CHECK(told[0].blocks);
  CHECK(missing(model, open, settled).empty());
}

TEST_CASE("uncheckable: what no other reading checks is listed") {
  SurveyBuilder b;
  b.diagonal(0, 900, 1200, {1500}).level(0, 500, 100, 1300, 2).level(1, 500, 100, 1300, 2);
  const RoomReport report = adjust(b.survey).report();
  CHECK(std::count(report.uncheckable.begin(), report.uncheckable.end(),
                   "corner[0].diagonals[0]") == 1);
  for (const ReadingReport& reading : report.readings) {
    const bool listed =
        std::count(report.uncheckable.begin(), report.uncheckable.end(), reading.id);
    CHECK(listed == (reading.redundancy < 0.1));
  }
}

TEST_CASE("facts: an outlet clear of every stud") {
  SurveyBuilder b;
  Studs studs;
  studs.spacing = millimetres(400);
  StudFound found;
  found.left_edge = {b.reading(380, "left")};
  found.right_edge = {b.reading(418, "right")};
  studs.found = {found};
  Obstacle outlet;
  outlet.kind = ObstacleKind::outlet;
  outlet.name = "outlet";
  outlet.along[0] = millimetres(420);
  outlet.along[1] = millimetres(490);
  b.survey.walls[0].studs = studs;
  b.survey.walls[0].obstacles = {outlet};
  CHECK(adjust(b.survey).report().facts.empty());  // on the stud's side
  b.survey.walls[0].obstacles[0].along[0] = millimetres(560);
  b.survey.walls[0].obstacles[0].along[1] = millimetres(630);
  REQUIRE(adjust(b.survey).report().facts.size() == 1);
  CHECK(adjust(b.survey).report().facts[0].find("clear of every stud") != std::string::npos);
  for (const ObstacleKind kind :
       {ObstacleKind::switch_box, ObstacleKind::thermostat, ObstacleKind::alarm}) {
    b.survey.walls[0].obstacles[0].kind = kind;
    CHECK(adjust(b.survey).report().facts.size() == 1);
  }
  b.survey.walls[0].obstacles[0].kind = ObstacleKind::casing;
  CHECK(adjust(b.survey).report().facts.empty());
  b.survey.walls[0].obstacles[0].kind = ObstacleKind::outlet;
  b.survey.walls[0].obstacles[0].along[0] = millimetres(1220);  // beside the stud at 1199
  b.survey.walls[0].obstacles[0].along[1] = millimetres(1290);
  CHECK(adjust(b.survey).report().facts.empty());
}
