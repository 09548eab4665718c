// The plan of the fewest readings keeps its promise in simulated rooms.
#include "survey/plan.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "survey/adjustment.h"
#include "survey_builder.h"
#include "true_room.h"

using namespace nook;
using namespace nook::test;

namespace {

constexpr std::uint64_t kSeed = 61;

// An upright edge on the right wall and a level one on the left, each against its own middle.
PlanWanted wanted_of(double tolerance) {
  PlanWanted wanted;
  const auto add = [&](const std::vector<SurfaceSpot>& spots) {
    for (const SurfaceSpot& spot : spots) {
      Undecided u;
      u.tolerance = tolerance;
      for (const SurfaceSpot& other : spots)
        u.terms.push_back({other, (&other == &spot ? 1.0 : 0.0) - 1.0 / double(spots.size())});
      wanted.surfaces.push_back(u);
    }
  };
  std::vector<SurfaceSpot> upright, level;
  for (const double z : {50.0, 450.0, 850.0, 1250.0, 1650.0, 2050.0})
    upright.push_back({SurfaceSpot::On::wall, 1, 900, z, {}});
  for (const double along : {100.0, 500.0, 900.0, 1300.0})
    level.push_back({SurfaceSpot::On::wall, 0, along, 1000, {}});
  add(upright);
  add(level);
  wanted.surfaces.push_back({{{{SurfaceSpot::On::wall, 1, 900, 900, {}}, 1}}, 4});
  return wanted;
}

double worst(const Adjustment& adjusted, const PlanWanted& wanted) {
  double most = 0;
  for (const Undecided& u : wanted.surfaces) most = std::max(most, adjusted.variance(u));
  return most;
}

// The readings of a plan as a person takes them, but one.
Survey taken(const MeasuringPlan& plan, int but, std::uint64_t seed) {
  Random random(seed);
  const Kind kind;
  const TrueRoom room = true_room(kind, random);
  Person person(room, kind, random);
  Survey survey = person.nothing();
  survey.flatness.sd = millimetres(kind.flatness);
  for (int i = 0; i < static_cast<int>(plan.readings.size()); ++i)
    if (i != but) person.take(survey, plan.readings[static_cast<std::size_t>(i)].reading);
  return survey;
}

Survey bare() {
  Random random(kSeed);
  const Kind kind;
  const TrueRoom room = true_room(kind, random);
  return Person(room, kind, random).nothing();
}

}  // namespace

TEST_CASE("plan: the fewest readings for one upright contact, in walking order") {
  SurveyBuilder b;
  b.length(0, {2400}).length(1, {2400});
  PlanWanted wanted;
  for (const double z : {200.0, 900.0, 1600.0})
    wanted.surfaces.push_back({{{{SurfaceSpot::On::wall, 1, 900, z, {}}, 1}}, 3});
  const MeasuringPlan plan = measuring_plan(b.survey, 0, wanted);
  CHECK(plan.enough);
  CHECK(plan.readings.size() <= 15);
  CHECK(plan.minutes <= 30);
  const auto kind = [&](NextReading::Kind k) {
    return std::count_if(plan.readings.begin(), plan.readings.end(),
                         [&](const PlannedReading& p) { return p.reading.kind == k; });
  };
  CHECK(kind(NextReading::Kind::diagonal) >= 1);
  CHECK(kind(NextReading::Kind::level) >= 1);
  CHECK(plan.readings.front().reading.kind == NextReading::Kind::diagonal);  // corners before walls
  double gains = 0;
  for (const PlannedReading& p : plan.readings) gains += p.reading.gain;
  CHECK(gains < 1);
  // Half the tolerance takes more.
  for (Undecided& u : wanted.surfaces) u.tolerance = 2.2;
  CHECK(measuring_plan(b.survey, 0, wanted).readings.size() > plan.readings.size());
  for (Undecided& u : wanted.surfaces) u.tolerance = 0.01;
  CHECK(!measuring_plan(b.survey, 0, wanted).enough);
}

TEST_CASE("plan: its readings, taken, bring everything within tolerance, and none is needless",
          "[property]") {
  const double tolerance = GENERATE(1.9, 1.2);
  const PlanWanted wanted = wanted_of(tolerance);
  const MeasuringPlan plan = measuring_plan(bare(), 0, wanted);
  INFO("tolerance " << tolerance << ", " << plan.readings.size() << " readings");
  REQUIRE(plan.enough);
  // A little over: the plan is made where nothing is measured yet, and slopes differ.
  constexpr double kNearly = 1.08;
  for (const std::uint64_t seed : {1, 2, 3}) {
    INFO("seed " << seed);
    CHECK(worst(adjust(taken(plan, -1, seed)), wanted) < kNearly);
    for (int but = 0; but < static_cast<int>(plan.readings.size()); ++but) {
      INFO("without: " << plan.readings[static_cast<std::size_t>(but)].reading.reading);
      CHECK(worst(adjust(taken(plan, but, seed)), wanted) > 1 / kNearly);
    }
  }
}

TEST_CASE("plan: an upright edge that must be close is read every 16 in up it", "[property]") {
  const MeasuringPlan plan = measuring_plan(bare(), 0, wanted_of(1.2));
  const auto line = std::find_if(plan.readings.begin(), plan.readings.end(), [](const auto& p) {
    return p.reading.kind == NextReading::Kind::plumb;
  });
  REQUIRE(line != plan.readings.end());
  CHECK(line->reading.at_mm == Approx(900).margin(13));
  CHECK(line->reading.up_mm == Approx(102).margin(13));
  CHECK(line->reading.to_mm == Approx(2050).margin(13));
  CHECK(line->numbers == 6);
}

TEST_CASE("plan: what the file says already is not asked again") {
  const PlanWanted wanted = wanted_of(1.9);
  const MeasuringPlan plan = measuring_plan(bare(), 0, wanted);
  const MeasuringPlan rest = measuring_plan(taken(plan, 0, 4), 0, wanted);
  CHECK(rest.readings.size() < plan.readings.size());
  Survey all = taken(plan, -1, 4);
  for (const PlannedReading& again : plan.readings) {
    Random random(9);
    const Kind kind;
    const TrueRoom room = true_room(kind, random);
    Person(room, kind, random).take(all, again.reading);
  }
  CHECK(measuring_plan(all, 0, wanted).readings.empty());
}

TEST_CASE("plan: the floor's height is read from a level line that nobody has struck yet") {
  PlanWanted wanted;
  wanted.floor = {{0, 900, 300, 4}, {1, 600, 300, 4}};
  const MeasuringPlan plan = measuring_plan(bare(), 0, wanted);
  REQUIRE(plan.enough);
  REQUIRE(!plan.readings.empty());
  for (const PlannedReading& p : plan.readings) CHECK(p.reading.kind == NextReading::Kind::drop);
}

TEST_CASE("plan: what is taken leaves nothing of the room missing, however much the pieces allow") {
  PlanWanted wanted;
  wanted.surfaces = {{{{{SurfaceSpot::On::wall, 0, 500, 400, {}}, 1}}, 500}};  // half a meter
  CHECK(measuring_plan(bare(), 0, wanted).readings.empty());
  wanted.whole = true;
  wanted.heights.floor = true;
  const MeasuringPlan plan = measuring_plan(bare(), 0, wanted);
  CHECK(plan.enough);
  const Survey survey = taken(plan, -1, 4);
  CHECK(adjust(survey).report().missing.empty());
  CHECK(missing_heights(survey, wanted.heights).empty());
  CHECK(missing_drops(survey, wanted.heights) == 0);
  std::vector<Vec2> places;
  for (const PlannedReading& p : plan.readings)
    if (p.reading.kind == NextReading::Kind::drop)
      places.push_back({p.reading.of == 0 ? p.reading.at_mm : p.reading.to_mm,
                        p.reading.of == 0 ? p.reading.to_mm : p.reading.at_mm});
  REQUIRE(places.size() == 3);
  CHECK(norm(places[1] - places[0]) > 200);
  CHECK(norm(places[2] - places[1]) > 200);
  for (int but = 0; but < static_cast<int>(plan.readings.size()); ++but) {
    const Survey fewer = taken(plan, but, 4);
    INFO("without: " << plan.readings[static_cast<std::size_t>(but)].reading.reading);
    CHECK(adjust(fewer).report().missing.size() + missing_heights(fewer, wanted.heights).size() >
          0);
  }
  CHECK(measuring_plan(survey, 0, wanted).readings.empty());
}

TEST_CASE("plan: without the wall's length no mark lies beyond the pieces") {
  SurveyBuilder b({"left", "back", "right"});
  PlanWanted wanted;
  for (const int wall : {0, 1, 2})
    wanted.surfaces.push_back({{{{SurfaceSpot::On::wall, wall, 500, 400, {}}, 1}}, 3});
  wanted.reach = {700, 1170, 700};
  for (const PlannedReading& p : measuring_plan(b.survey, 0, wanted).readings) {
    INFO(p.reading.reading);
    if (p.reading.kind == NextReading::Kind::diagonal) {
      CHECK(p.reading.at_mm < (p.reading.of == 0 ? 700 : 1170));
      CHECK(p.reading.to_mm < (p.reading.of == 0 ? 1170 : 700));
    }
    if (p.reading.kind == NextReading::Kind::level) CHECK(p.reading.at_mm < 1170);
  }
}

TEST_CASE("plan: floor spots stay off the corner itself") {
  SurveyBuilder b({"left", "back", "right"});
  b.length(1, {1000});
  PlanWanted wanted;
  wanted.floor = {{1, 1000, 100, 4}, {1, 0, 100, 4}, {0, 0, 100, 4}};
  const MeasuringPlan plan = measuring_plan(b.survey, 0, wanted);
  REQUIRE_FALSE(plan.readings.empty());
  for (const PlannedReading& p : plan.readings) {
    INFO(p.reading.reading);
    CHECK(p.reading.at_mm >= 100);
  }
}

TEST_CASE(
    "plan: what meets the ceiling wants three heights of it, what is tipped up under it one") {
  PlanWanted wanted;
  wanted.surfaces = {{{{{SurfaceSpot::On::wall, 0, 500, 400, {}}, 1}}, 500}};
  const auto rises = [&](const Survey& survey) {
    return measuring_plan(survey, 0, wanted).ceiling.size();
  };
  CHECK(rises(bare()) == 0);
  wanted.heights.headroom = true;
  CHECK(rises(bare()) == 1);
  CHECK(measuring_plan(bare(), 0, wanted)
            .ceiling.front()
            .reading.reading.starts_with(
                "measure from the level line up to the ceiling at the left wall"));
  wanted.heights.ceiling = true;
  CHECK(rises(bare()) == 3);
  SurveyBuilder b;
  b.rise(0, 305, 305, 1400);  // where the plan goes first
  const MeasuringPlan plan = measuring_plan(b.survey, 0, wanted);
  CHECK(plan.ceiling.size() == 2);
  for (const PlannedReading& planned : plan.ceiling)
    CHECK((planned.reading.of != 0 || std::abs(planned.reading.at_mm - 305) > 400));
}
