// Goldfarb and Idnani (1983), A numerically stable dual method for strictly convex quadratic
// programs.
#include "fit/least_move.h"

#include <cmath>
#include <limits>

#include "base/invariant.h"

namespace nook {
namespace {

constexpr double kKept = 1e-7;       // a half-plane missed by less counts as kept
constexpr double kParallel = 1e-11;  // squared; a slope this near the active ones adds no direction
constexpr double kInfinite = std::numeric_limits<double>::infinity();

struct State {
  Unknowns y;
  std::vector<int> active;
  std::vector<double> force;  // one for each active half-plane, never negative
};

double dot(const Unknowns& a, const Unknowns& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2] + a[3] * b[3] + a[4] * b[4];
}

void add(Unknowns& a, double times, const Unknowns& b) {
  for (int i = 0; i < kUnknowns; ++i) a[i] += times * b[i];
}

int most_missed(const std::vector<HalfPlane>& planes, const Unknowns& y) {
  int worst = -1;
  double most = kKept;
  for (int i = 0; i < static_cast<int>(planes.size()); ++i) {
    const double missed = planes[i].least - dot(planes[i].slope, y);
    if (missed > most) most = missed, worst = i;
  }
  return worst;
}

// The active slopes as an orthonormal basis times a triangle (Gram and Schmidt, each direction
// taken out twice, which keeps them square to rounding).
struct Basis {
  int size = 0;
  Unknowns q[kUnknowns];
  double r[kUnknowns][kUnknowns] = {};

  // What the basis leaves of a slope; `shares` its part along each direction.
  Unknowns left_of(Unknowns slope, double (&shares)[kUnknowns]) const {
    for (double& s : shares) s = 0;
    for (int pass = 0; pass < 2; ++pass)
      for (int k = 0; k < size; ++k) {
        const double share = dot(q[k], slope);
        shares[k] += share;
        add(slope, -share, q[k]);
      }
    return slope;
  }
  void take(const Unknowns& slope) {
    double shares[kUnknowns];
    Unknowns left = left_of(slope, shares);
    const double length = std::sqrt(dot(left, left));
    for (int k = 0; k < size; ++k) r[k][size] = shares[k];
    r[size][size] = length;
    for (double& x : left) x /= length;
    q[size++] = left;
  }
};

struct Step {
  Unknowns z;                // the part of the new slope that the active ones leave free
  double r[kUnknowns] = {};  // how the active forces give way
};

Step step_towards(const std::vector<HalfPlane>& planes, const State& s, const Unknowns& slope) {
  Basis basis;
  for (int active : s.active) basis.take(planes[active].slope);
  Step step;
  double shares[kUnknowns];
  step.z = basis.left_of(slope, shares);
  for (int k = basis.size - 1; k >= 0; --k) {
    step.r[k] = shares[k];
    for (int j = k + 1; j < basis.size; ++j) step.r[k] -= basis.r[k][j] * step.r[j];
    step.r[k] /= basis.r[k][k];
  }
  return step;
}

// The active half-plane that lets go first, and at which force.
std::pair<int, double> first_to_let_go(const State& s, const double (&r)[kUnknowns]) {
  std::pair<int, double> first{-1, kInfinite};
  for (int j = 0; j < static_cast<int>(s.active.size()); ++j)
    if (r[j] > 1e-12 && s.force[j] / r[j] < first.second) first = {j, s.force[j] / r[j]};
  return first;
}

// Takes half-plane `add` in, letting others go as needed; false if it contradicts the others.
bool take_in(const std::vector<HalfPlane>& planes, int taken, State& s) {
  const Unknowns& slope = planes[taken].slope;
  double force = 0;
  for (int round = 0; round <= 2 * kUnknowns; ++round) {
    const Step step = step_towards(planes, s, slope);
    const double free = dot(step.z, step.z);
    const auto [gone, limit] = first_to_let_go(s, step.r);
    const bool blocked = free <= kParallel * dot(slope, slope) ||
                         s.active.size() == static_cast<std::size_t>(kUnknowns);
    if (blocked && gone < 0) return false;
    const double whole = blocked ? kInfinite : (planes[taken].least - dot(slope, s.y)) / free;
    const double t = std::min(limit, whole);
    if (!blocked) add(s.y, t, step.z);
    for (std::size_t j = 0; j < s.active.size(); ++j) s.force[j] -= t * step.r[j];
    force += t;
    if (whole <= limit) {
      s.active.push_back(taken);
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
  State s{wish, {}, {}};
  for (int round = 0; round < 1000; ++round) {
    const int worst = most_missed(planes, s.y);
    if (worst < 0) return s.y;
    if (!take_in(planes, worst, s)) return std::nullopt;
  }
  require(false, "the least move is found in a finite number of steps");
  return std::nullopt;
}

}  // namespace nook
