// The least move against every choice of active half-planes tried in turn.
#include "fit/least_move.h"

#include <Eigen/Dense>
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

using namespace nook;

namespace {

using Five = Eigen::Matrix<double, kUnknowns, 1>;

double distance2(const Unknowns& a, const Unknowns& b) {
  double sum = 0;
  for (int i = 0; i < kUnknowns; ++i) sum += (a[i] - b[i]) * (a[i] - b[i]);
  return sum;
}

bool kept(const Unknowns& y, const std::vector<HalfPlane>& planes, double slack) {
  for (const HalfPlane& p : planes) {
    double value = -p.least;
    for (int i = 0; i < kUnknowns; ++i) value += p.slope[i] * y[i];
    if (value < -slack) return false;
  }
  return true;
}

// The point nearest to `wish` on all the given planes at once.
std::optional<Unknowns> on_planes(const Unknowns& wish, const std::vector<HalfPlane>& planes,
                                  const std::vector<int>& chosen) {
  const Five w(wish.data());
  Eigen::MatrixXd n(chosen.size(), kUnknowns);
  Eigen::VectorXd b(chosen.size());
  for (std::size_t k = 0; k < chosen.size(); ++k) {
    n.row(k) = Five(planes[chosen[k]].slope.data());
    b[k] = planes[chosen[k]].least;
  }
  const Five y = w + n.completeOrthogonalDecomposition().solve(b - n * w);
  if ((n * y - b).norm() > 1e-8) return std::nullopt;
  return Unknowns{y[0], y[1], y[2], y[3], y[4]};
}

void try_sets(const Unknowns& wish, const std::vector<HalfPlane>& planes, std::vector<int>& chosen,
              int from, std::optional<Unknowns>& best) {
  const auto y = chosen.empty() ? std::optional<Unknowns>(wish) : on_planes(wish, planes, chosen);
  if (y && kept(*y, planes, 1e-8) && (!best || distance2(*y, wish) < distance2(*best, wish)))
    best = y;
  if (chosen.size() == kUnknowns) return;
  for (int i = from; i < static_cast<int>(planes.size()); ++i) {
    chosen.push_back(i);
    try_sets(wish, planes, chosen, i + 1, best);
    chosen.pop_back();
  }
}

}  // namespace

TEST_CASE("least move: agrees with every choice of active half-planes", "[property]") {
  std::mt19937 random(20);
  std::uniform_real_distribution<double> around(-1, 1);
  int impossible = 0;
  for (int round = 0; round < 300; ++round) {
    INFO("round " << round);
    std::vector<HalfPlane> planes(3 + round % 8);
    for (HalfPlane& p : planes) {
      for (double& s : p.slope) s = around(random);
      if (round % 3 == 0) p.slope[2] = 0;                                 // a way that is not free
      if (round % 4 == 0 && &p != &planes[0]) p.slope = planes[0].slope;  // parallel ones
      if (round % 8 == 4) p.slope[1] += 1e-7 * around(random);            // nearly parallel ones
      p.least = 5 * around(random);
    }
    const Unknowns wish{3 * around(random), 3 * around(random), 3 * around(random), -10,
                        around(random)};
    std::vector<int> chosen;
    std::optional<Unknowns> slow;
    try_sets(wish, planes, chosen, 0, slow);
    const auto fast = nearest_allowed(wish, planes);
    REQUIRE(fast.has_value() == slow.has_value());
    if (!fast) {
      ++impossible;
      continue;
    }
    CHECK(kept(*fast, planes, 1e-6));
    CHECK(std::sqrt(distance2(*fast, wish)) ==
          Approx(std::sqrt(distance2(*slow, wish))).margin(1e-5));
  }
  CHECK(impossible < 100);
}

namespace {

std::vector<HalfPlane> around_a_point(std::mt19937& random, int count) {
  std::uniform_real_distribution<double> around(-1, 1);
  std::vector<HalfPlane> planes(count);
  for (int i = 0; i < count; ++i) {
    for (double& s : planes[i].slope) s = around(random);
    planes[i].least = -1 - around(random);  // 0 is allowed: there is an answer
    planes[i].key = i + 1;
  }
  return planes;
}

std::vector<std::int64_t> sorted(const Stops& stops) {
  std::vector<std::int64_t> keys(stops.keys.begin(), stops.keys.begin() + stops.count);
  std::sort(keys.begin(), keys.end());
  return keys;
}

}  // namespace

TEST_CASE("least move: where it looks first changes nothing but the way", "[property]") {
  std::mt19937 random(21);
  std::uniform_real_distribution<double> around(-1, 1);
  int right = 0;
  for (int round = 0; round < 300; ++round) {
    INFO("round " << round);
    std::vector<HalfPlane> planes = around_a_point(random, 5 + round % 30);
    const Unknowns wish{3 * around(random), 3 * around(random), around(random), -1e3, 0};
    Stops known;  // of a program that is a little different
    REQUIRE(nearest_allowed(wish, planes, &known));
    for (HalfPlane& p : planes) p.least += 0.05 * around(random);
    Stops any;
    while (any.count < kUnknowns)
      any.keys[any.count++] = 1 + static_cast<std::int64_t>(random() % planes.size());
    const auto cold = nearest_allowed(wish, planes);
    const Stops before = known;
    for (Stops* stops : {&known, &any}) {
      const auto warm = nearest_allowed(wish, planes, stops);
      REQUIRE(warm.has_value() == cold.has_value());
      CHECK(std::sqrt(distance2(*warm, *cold)) < 1e-6);
    }
    right += sorted(known) == sorted(before);
  }
  CHECK(right > 150);  // mostly it had looked in the right place
}
