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
  // A stud that is struck out is none: the box stays clear of every other.
  StudFound struck;
  struck.centre = {b.reading(595, "struck")};
  struck.centre[0].struck = true;
  b.survey.walls[0].studs->found.push_back(struck);
  CHECK(adjust(b.survey).report().facts.size() == 1);
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

TEST_CASE("missing: blocking or an opening that counts from the line wants the line") {
  SurveyBuilder b;
  b.diagonal(0, 900, 1200, {1500}).level(0, 500, 100, 1300, 3).level(1, 500, 100, 1300, 3);
  CHECK(adjust(b.survey).report().missing.empty());
  const std::string line =
      "nothing says how high the level line is: measure once from it down to the floor";
  Survey blocked = b.survey;
  Studs& studs = blocked.walls[0].studs.emplace();
  studs.blocking = {{{millimetres(300), millimetres(700)},
                     false,
                     {{millimetres(-100), true, {}}, {millimetres(-10), true, {}}},
                     {}}};
  CHECK(says(adjust(blocked).report(), line, true));
  studs.blocking[0].height[0].from_line = studs.blocking[0].height[1].from_line = false;
  CHECK(adjust(blocked).report().missing.empty());
  Survey up = b.survey;
  Opening opening;
  opening.height = Height{millimetres(50), true, {}};
  up.installed = {{{}, {opening}, {}}};
  CHECK(says(adjust(up).report(), line, true));
}

TEST_CASE("missing: the floor lies under, the ceiling over") {
  SurveyBuilder b;
  b.drop(0, 100, 100, 1000);
  const std::vector<Missing> told = missing_heights(b.survey, {true, true});
  REQUIRE(told.size() == 2);
  CHECK(
      told[0].what ==
      "too little says how the floor lies under what stands or hangs: measure down from the level "
      "line in 2 more places");
  CHECK(
      told[1].what ==
      "nothing says how the ceiling lies over what stands or hangs: measure up from the level line "
      "in 3 more places");
}

namespace {

// Studs found by their centers.
Survey with_studs(const std::vector<double>& centres, double spacing = 400) {
  SurveyBuilder b;
  Studs studs;
  studs.spacing = millimetres(spacing);
  for (const double mm : centres) {
    StudFound found;
    found.centre = {b.reading(mm, "centre")};
    found.centre[0].given = std::to_string(static_cast<int>(mm));
    studs.found.push_back(found);
  }
  b.survey.units = Unit::mm;
  b.survey.walls[0].studs = studs;
  return b.survey;
}

}  // namespace

TEST_CASE("facts: a stud off the spacing of the others is told, with the slip that explains it") {
  CHECK(adjust(with_studs({390, 805, 1180})).report().facts.empty());
  CHECK(adjust(with_studs({390})).report().facts.empty());
  const auto stray = adjust(with_studs({390, 790, 1120, 1590})).report().facts;
  REQUIRE(stray.size() == 1);
  CHECK(
      stray[0] ==
      "The stud found at 1120 mm on the left wall stands 70 mm off the spacing of 400 mm from the "
      "one at 390 mm: one more stud, or a figure to take again.");
  const auto swapped = adjust(with_studs({480, 1248})).report().facts;  // for 1284
  REQUIRE(swapped.size() == 1);
  CHECK(swapped[0].find("perhaps two digits swapped (1284)") != std::string::npos);
  const auto first = adjust(with_studs({184, 745}, 600)).report().facts;  // for 148
  REQUIRE(first.size() == 1);
  CHECK(first[0].find("perhaps two digits swapped (148)") != std::string::npos);
}

TEST_CASE("facts: a tape held at a burned mark, and no length says so") {
  SurveyBuilder b;
  b.length(0, {3000}).length(1, {2000});
  CHECK(adjust(b.survey).report().facts.empty());
  b.survey.tape.corner = TapeEnd::burned;
  const auto facts = adjust(b.survey).report().facts;
  REQUIRE(facts.size() == 1);
  CHECK(facts[0].find("no length says so") != std::string::npos);
  b.survey.walls[1].length[0].burned = true;
  CHECK(adjust(b.survey).report().facts.empty());
}
