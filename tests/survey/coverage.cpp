// Foretold diagonals over simulated rooms: how often the truth lies in the interval, and how wide
// it is against the exact answer with known statistics.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <iostream>

#include "dense_answer.h"
#include "survey/adjustment.h"
#include "true_room.h"

using namespace nook;
using namespace nook::test;

namespace {

constexpr std::uint64_t kSeed = 17;

struct Asked {
  double first, second, height;
};

Asked asked(Random& random) {
  return {even(random, 500, 1900), even(random, 500, 1900), even(random, 300, 1700)};
}

struct Tally {
  int inside = 0, all = 0;
  std::vector<double> wider;  // than the exact answer

  double share() const { return double(inside) / all; }
  double median_width() {
    std::sort(wider.begin(), wider.end());
    return wider[wider.size() / 2];
  }
};

enum class Told { flatness, nothing, half, twice };
constexpr int kDenseEvery = 16;  // rooms: the exact answer is slow

void add_room(Tally& tally, const Kind& kind, Told told, Random& random) {
  const bool dense = tally.all / 2 % kDenseEvery == 0;
  const TrueRoom room = true_room(kind, random);
  Survey survey = Person(room, kind, random).careful(3, 2);
  if (told == Told::flatness) {
    survey.flatness.sd = millimetres(kind.flatness);
    survey.flatness.reach = millimetres(kind.reach);
  }
  if (told == Told::half || told == Told::twice)
    survey.flatness.sd = millimetres(kind.flatness * (told == Told::half ? 0.5 : 2));
  const Adjustment adjusted = adjust(survey);
  for (int i = 0; i < 2; ++i) {
    const Asked a = asked(random);
    const auto found = adjusted.expected_diagonal(0, a.first, a.second, a.height);
    REQUIRE(found);
    const double off = room.diagonal(a.first, a.second, a.height) - found->value;
    tally.inside += std::abs(off) < kTwoSided95 * found->sd;
    ++tally.all;
    if (i > 0 || !dense) continue;
    const Statistics known{kind.flatness, kind.reach, kind.lean_sd};
    tally.wider.push_back(found->sd /
                          dense_diagonal(survey, known, a.first, a.second, a.height).sd);
  }
}

Tally tally_of(const Kind& kind, Told told, int rooms) {
  Random random(kSeed);
  Tally tally;
  for (int i = 0; i < rooms; ++i) add_room(tally, kind, told, random);
  return tally;
}

}  // namespace

TEST_CASE("foretold diagonal: equals the dense Gaussian answer", "[property]") {
  INFO("seed " << kSeed);
  Random random(kSeed);
  const Kind kind;
  for (int i = 0; i < 6; ++i) {
    const TrueRoom room = true_room(kind, random);
    Survey survey = Person(room, kind, random).careful(2, 2);
    survey.flatness.sd = millimetres(2);
    const Asked a = asked(random);
    const auto found = adjust(survey).expected_diagonal(0, a.first, a.second, a.height);
    const Measured exact = dense_diagonal(survey, {2, 400, 0.01}, a.first, a.second, a.height);
    REQUIRE(found);
    CHECK(found->sd == Approx(exact.sd).epsilon(2e-3));
    CHECK(found->value == Approx(exact.value).margin(0.03));
  }
}

TEST_CASE("foretold diagonals lie in their interval in hundreds of rooms", "[property][release]") {
  INFO("seed " << kSeed);
  Tally told = tally_of({}, Told::flatness, 500), untold = tally_of({}, Told::nothing, 500);
  std::cout << "  foretold diagonals: inside " << told.share() << ", width " << told.median_width()
            << "; flatness not told: inside " << untold.share() << ", width "
            << untold.median_width() << "\n";
  for (const Tally& tally : {told, untold}) {
    CHECK(tally.share() > 0.93);
    CHECK(tally.share() < 0.975);
  }
  CHECK(told.median_width() < 1.3);
  CHECK(untold.median_width() < 1.3);
}

TEST_CASE("foretold diagonals lie in their interval 93 to 97.5 times in 100", "[property][.full]") {
  const Told how = GENERATE(Told::flatness, Told::nothing);
  INFO("seed " << kSeed << (how == Told::flatness ? ", flatness told" : ", flatness not told"));
  Tally tally = tally_of({}, how, 2000);
  std::cout << "  inside " << tally.share() << ", width " << tally.median_width() << "\n";
  CHECK(tally.share() > 0.93);
  CHECK(tally.share() < 0.975);
  CHECK(tally.median_width() < 1.3);
}

TEST_CASE("foretold diagonals in rooms that break the model, reported without target",
          "[property][.full]") {
  const auto [what, kind, told] = GENERATE(table<std::string, Kind, Told>(
      {{"walls with a 3 mm step", {2, 400, 0.004, 1.5, 3, 0, 0}, Told::nothing},
       {"3 mm of mud in the corner", {2, 400, 0.004, 1.5, 0, 3, 0}, Told::nothing},
       {"a tape 0.1 % short", {2, 400, 0.004, 1.5, 0, 0, 0.001}, Told::nothing},
       {"walls of 5 mm", {5, 400, 0.004, 1.5, 0, 0, 0}, Told::nothing},
       {"waves of 250 mm", {2, 250, 0.004, 1.5, 0, 0, 0}, Told::nothing},
       {"flatness told half as large", {}, Told::half},
       {"flatness told twice as large", {}, Told::twice}}));
  Tally tally = tally_of(kind, told, 500);
  std::cout << "  " << what << ": inside " << tally.share() << ", width " << tally.median_width()
            << "\n";
  CHECK(tally.share() > 0.7);
  CHECK(tally.median_width() > 0.5);
}
