// The advice what to measure next, against readings taken at random.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <iostream>

#include "survey/adjustment.h"
#include "true_room.h"

using namespace nook;
using namespace nook::test;

namespace {

constexpr std::uint64_t kSeed = 29;
constexpr int kReadings = 3;
constexpr double kAllow = 12;  // mm that the second wall may stand off where a piece meets it

// Where an upright edge, 1.1 m from the corner and tight to the first wall, meets the second.
constexpr double kAlong = 1100, kHeights[] = {300, 1000, 1700};

std::vector<Undecided> undecided() {
  std::vector<Undecided> out;
  for (const double z : kHeights)
    out.push_back({{{{SurfaceSpot::On::wall, 1, kAlong, z, {}}, 1}}, 1});
  return out;
}

// How far the wall stands from where a square corner has it.
double off(const RoomShape& room, double z) {
  return room.walls[1].point(kAlong, z).x;
}

Verdict verdict(const Adjustment& adjusted) {
  int within = 0;
  const auto draws = adjusted.draws(400);
  for (const RoomShape& room : draws)
    within += std::all_of(std::begin(kHeights), std::end(kHeights),
                          [&](double z) { return std::abs(off(room, z)) < kAllow; });
  return verdict_of(within / 400.0, 0.95);
}

NextReading at_random(Random& random) {
  constexpr double kFoot = 304.8;
  NextReading next;
  const auto mark = [&] { return kFoot * std::floor(even(random, 1, 7)); };
  next.of = even(random, 0, 1) < 0.5 ? 0 : 1;
  next.at_mm = mark();
  const double kind = even(random, 0, 3);
  if (kind < 1) {
    next.kind = NextReading::Kind::diagonal;
    next.to_mm = mark();
    next.up_mm = kFoot * std::floor(even(random, 1, 6));
  } else if (kind < 2) {
    next.kind = NextReading::Kind::level;
    next.up_mm = 100;
    next.to_mm = 1319.2;
  } else {
    next.kind = NextReading::Kind::straightedge;
    next.to_mm = next.at_mm + 1219.2;
    next.up_mm = kFoot * std::floor(even(random, 1, 6));
  }
  return next;
}

struct Shares {
  int open = 0, advised = 0, random = 0;
};

void add_room(Shares& shares, Random& random) {
  Kind kind;
  kind.angle_sd_deg = 0.3;  // near enough that the question is open
  kind.lean_sd = 0.002;
  const TrueRoom room = true_room(kind, random);
  Person person(room, kind, random);
  Survey advised = person.sparse();
  if (verdict(adjust(advised)) != Verdict::cannot_tell) return;
  ++shares.open;
  Survey other = advised;
  for (int i = 0; i < kReadings; ++i) {
    const auto next = adjust(advised).measure_next(undecided(), 1);
    REQUIRE(!next.empty());
    person.take(advised, next.front());
    person.take(other, at_random(random));
  }
  shares.advised += verdict(adjust(advised)) != Verdict::cannot_tell;
  shares.random += verdict(adjust(other)) != Verdict::cannot_tell;
}

}  // namespace

TEST_CASE("three readings as advised settle more than three at random", "[property][release]") {
  INFO("seed " << kSeed);
  Random random(kSeed);
  Shares shares;
  while (shares.open < 200) add_room(shares, random);
  std::cout << "  of " << shares.open << " open rooms settled: " << shares.advised
            << " as advised, " << shares.random << " at random\n";
  CHECK(shares.advised > shares.random + 20);
}

TEST_CASE("measure next: gains are shares, best first, and add up to less than all") {
  Random random(kSeed);
  const Kind kind;
  const TrueRoom room = true_room(kind, random);
  const Adjustment adjusted = adjust(Person(room, kind, random).sparse());
  const auto next = adjusted.measure_next({}, 5);
  REQUIRE(next.size() > 1);
  double sum = 0;
  for (std::size_t i = 0; i < next.size(); ++i) {
    sum += next[i].gain;
    if (i > 0) CHECK(next[i].gain <= next[i - 1].gain);
  }
  CHECK(sum < 1);
}

TEST_CASE("measure next: the gain foretold is the variance that the reading removes") {
  Random random(kSeed);
  Kind kind;
  const TrueRoom room = true_room(kind, random);
  Person person(room, kind, random);
  Survey survey = person.sparse();
  survey.flatness.sd = millimetres(2);
  const auto wanted = undecided();
  const auto open = [&](const Adjustment& a) {
    double sum = 0;
    for (const Undecided& u : wanted) sum += a.variance(u);
    return sum;
  };
  const Adjustment before = adjust(survey);
  const NextReading next = before.measure_next(wanted, 1).front();
  person.take(survey, next);
  const double gain = 1 - open(adjust(survey)) / open(before);
  CHECK(gain == Approx(next.gain).epsilon(0.02));
}

TEST_CASE("measure next: in an empty corner the first reading is a diagonal") {
  const Adjustment adjusted = adjust(SurveyBuilder().survey);
  const auto next = adjusted.measure_next({}, 1);
  REQUIRE(!next.empty());
  CHECK(next.front().kind == NextReading::Kind::diagonal);
  const RoomReport& report = adjusted.report();
  REQUIRE(!report.missing.empty());
  CHECK(report.missing.front().blocks);
  CHECK(report.missing.front().what ==
        "nothing says how the right wall stands: take one diagonal across the corner");
}
