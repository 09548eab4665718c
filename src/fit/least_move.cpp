// Goldfarb and Idnani (1983), A numerically stable dual method for strictly convex quadratic
// programs.
#include "fit/least_move.h"

#include <Eigen/Dense>
#include <cmath>
#include <limits>

#include "base/invariant.h"

namespace nook {
namespace {

using Vector = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, kUnknowns, 1>;
using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, kUnknowns, kUnknowns>;
using Full = Eigen::Matrix<double, kUnknowns, 1>;

constexpr double kKept = 1e-7;       // a half-plane missed by less counts as kept
constexpr double kParallel = 1e-11;  // squared; a slope this near the active ones adds no direction

struct State {
  Full y;
  std::vector<int> active;
  std::vector<double> force;  // one for each active half-plane, never negative
};

Full slope_of(const HalfPlane& plane) {
  return Eigen::Map<const Full>(plane.slope.data());
}

int most_missed(const std::vector<HalfPlane>& planes, const Full& y) {
  int worst = -1;
  double most = kKept;
  for (int i = 0; i < static_cast<int>(planes.size()); ++i) {
    const auto& s = planes[i].slope;
    const double missed = planes[i].least - (s[0] * y[0] + s[1] * y[1] + s[2] * y[2] + s[3] * y[3]);
    if (missed > most) most = missed, worst = i;
  }
  return worst;
}

struct Step {
  Full z = Full::Zero();  // the part of the new slope that the active ones leave free
  Vector r;               // how the active forces give way
};

Step step_towards(const std::vector<HalfPlane>& planes, const State& s, const Full& slope) {
  const int k = static_cast<int>(s.active.size());
  Step step{slope, Vector(k)};
  if (k == 0) return step;
  Eigen::Matrix<double, kUnknowns, Eigen::Dynamic, 0, kUnknowns, kUnknowns> n(kUnknowns, k);
  for (int j = 0; j < k; ++j) n.col(j) = slope_of(planes[s.active[j]]);
  step.r = n.colPivHouseholderQr().solve(slope);
  step.z = slope - n * step.r;
  return step;
}

// The active half-plane that lets go first, and at which force.
std::pair<int, double> first_to_let_go(const State& s, const Vector& r) {
  std::pair<int, double> first{-1, std::numeric_limits<double>::infinity()};
  for (int j = 0; j < static_cast<int>(s.active.size()); ++j)
    if (r[j] > 1e-12 && s.force[j] / r[j] < first.second) first = {j, s.force[j] / r[j]};
  return first;
}

// Takes half-plane `add` in, letting others go as needed; false if it contradicts the others.
bool take_in(const std::vector<HalfPlane>& planes, int add, State& s) {
  const Full slope = slope_of(planes[add]);
  double force = 0;
  for (int round = 0; round <= 2 * kUnknowns; ++round) {
    const Step step = step_towards(planes, s, slope);
    const double free = step.z.squaredNorm();
    const auto [gone, limit] = first_to_let_go(s, step.r);
    const bool blocked = free <= kParallel * slope.squaredNorm() ||
                         s.active.size() == static_cast<std::size_t>(kUnknowns);
    if (blocked && gone < 0) return false;
    const double whole = blocked ? std::numeric_limits<double>::infinity()
                                 : (planes[add].least - slope.dot(s.y)) / free;
    const double t = std::min(limit, whole);
    if (!blocked) s.y += t * step.z;
    for (std::size_t j = 0; j < s.active.size(); ++j) s.force[j] -= t * step.r[j];
    force += t;
    if (whole <= limit) {
      s.active.push_back(add);
      s.force.push_back(force);
      return true;
    }
    s.active.erase(s.active.begin() + gone);
    s.force.erase(s.force.begin() + gone);
  }
  return false;
}

}  // namespace

std::optional<Unknowns> nearest_allowed(const Unknowns& wish,
                                        const std::vector<HalfPlane>& planes) {
  State s{Eigen::Map<const Full>(wish.data()), {}, {}};
  for (int round = 0; round < 1000; ++round) {
    const int worst = most_missed(planes, s.y);
    if (worst < 0) return Unknowns{s.y[0], s.y[1], s.y[2], s.y[3]};
    if (!take_in(planes, worst, s)) return std::nullopt;
  }
  require(false, "the least move is found in a finite number of steps");
  return std::nullopt;
}

}  // namespace nook
