// Random networks of distances against an adjustment by coordinates: normal equations, fixed points
// left out of them, a free net by its pseudo-inverse. Nothing here shares code with the program.
#include <Eigen/Dense>
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "survey/adjustment.h"
#include "survey_builder.h"
#include "true_room.h"

using namespace nook;
using namespace nook::test;

namespace {

constexpr std::uint64_t kSeed = 71;
constexpr double kFixed = 0.001;  // mm, sd of a span between fixed points

struct Net {
  std::vector<Vec2> at;
  int fixed = 0;  // the first so many
  struct Tape {
    int a, b;
    double is, sd;
  };
  std::vector<Tape> tapes;
};

Net net_of(int points, int fixed, Random& random) {
  Net net;
  net.fixed = fixed;
  while (static_cast<int>(net.at.size()) < points) {
    const Vec2 p{even(random, 0, 5000), even(random, 0, 4000)};
    const bool apart =
        std::all_of(net.at.begin(), net.at.end(), [&](Vec2 q) { return norm(p - q) > 900; });
    if (apart) net.at.push_back(p);
  }
  for (int a = 0; a < points; ++a)
    for (int b = a + 1; b < points; ++b) {
      if (b < fixed || even(random, 0, 1) > 0.85) continue;
      const double sd = even(random, 0.3, 1.5);
      net.tapes.push_back({a, b, norm(net.at[a] - net.at[b]) + sd * gaussian(random), sd});
    }
  return net;
}

struct Result {
  std::vector<double> residual, redundancy, w;
};

// Gauss-Newton from the true places.
Result by_coordinates(const Net& net) {
  const int points = static_cast<int>(net.at.size()), n = static_cast<int>(net.tapes.size());
  std::vector<Vec2> at = net.at;
  Eigen::MatrixXd design;
  Eigen::VectorXd misfit(n);
  for (int round = 0; round < 20; ++round) {
    design = Eigen::MatrixXd::Zero(n, 2 * points);
    for (int i = 0; i < n; ++i) {
      const auto& [a, b, is, sd] = net.tapes[i];
      const Vec2 way = at[b] - at[a];
      const Vec2 unit = (1 / norm(way)) * way;
      for (const auto& [p, sign] : {std::pair{a, -1.0}, std::pair{b, 1.0}}) {
        if (p < net.fixed) continue;
        design(i, 2 * p) = sign * unit.x / sd;
        design(i, 2 * p + 1) = sign * unit.y / sd;
      }
      misfit[i] = (is - norm(way)) / sd;
    }
    const Eigen::VectorXd step = design.completeOrthogonalDecomposition().solve(misfit);
    for (int p = 0; p < points; ++p) at[p] = at[p] + Vec2{step[2 * p], step[2 * p + 1]};
  }
  const Eigen::MatrixXd hat = design * design.completeOrthogonalDecomposition().pseudoInverse();
  Result out;
  for (int i = 0; i < n; ++i) {
    const double r = 1 - hat(i, i);
    out.residual.push_back(-misfit[i] * net.tapes[i].sd);
    out.redundancy.push_back(r);
    out.w.push_back(-misfit[i] / std::sqrt(r));
  }
  return out;
}

std::string mark(int i) {
  return "P" + std::to_string(i);
}

// Marks in another order, tapes from the last, some the other way round; fixed ones tied last.
Survey survey_of(const Net& net) {
  SurveyBuilder b(std::vector<std::string>{});
  for (int i = static_cast<int>(net.at.size()) - 1; i >= 0; --i) b.mark_named(mark(i));
  for (int i = static_cast<int>(net.tapes.size()) - 1; i >= 0; --i) {
    const auto& tape = net.tapes[i];
    b.sd = millimetres(tape.sd);
    const bool turned = i % 2 == 0;
    b.span(mark(turned ? tape.b : tape.a), mark(turned ? tape.a : tape.b), {tape.is});
  }
  b.sd = millimetres(kFixed);
  for (int i = 0; i < net.fixed; ++i)
    for (int j = 0; j < i; ++j) b.span(mark(i), mark(j), {norm(net.at[i] - net.at[j])});
  return b.survey;
}

}  // namespace

TEST_CASE(
    "random networks, free and with two or three fixed points, equal an adjustment by "
    "coordinates",
    "[property]") {
  INFO("seed " << kSeed);
  Random random(kSeed);
  for (int i = 0; i < 24; ++i) {
    const int fixed = i % 3 == 0 ? 0 : i % 3 + 1;
    const Net net = net_of(5 + i % 5, fixed, random);
    INFO("net " << i << ", " << net.at.size() << " points, " << fixed << " fixed");
    const Adjustment adjusted = adjust(survey_of(net));
    const Result exact = by_coordinates(net);
    REQUIRE(adjusted.complete());
    const auto& readings = adjusted.report().readings;
    const std::size_t n = net.tapes.size();
    for (std::size_t k = 0; k < n; ++k) {
      const ReadingReport& reading = readings[n - 1 - k];
      CHECK(reading.residual_mm == Approx(exact.residual[k]).margin(1e-4));
      CHECK(reading.redundancy == Approx(exact.redundancy[k]).margin(2e-5));
      if (exact.redundancy[k] < 0.02) continue;
      REQUIRE(reading.w);
      CHECK(*reading.w == Approx(exact.w[k]).margin(2e-3));
    }
  }
}
