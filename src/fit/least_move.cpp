// Goldfarb and Idnani (1983), A numerically stable dual method for strictly convex quadratic
// programs.
#include "fit/least_move.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/invariant.h"

namespace nook {
namespace {

constexpr double kKept = 1e-7;       // a half-plane missed by less counts as kept
constexpr double kParallel = 1e-11;  // squared; a slope this near the active ones adds no direction
constexpr double kInfinite = std::numeric_limits<double>::infinity();

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

// The half-planes that stop the move, y on all of them at the least distance from the wish. Their
// slopes are an orthonormal basis times a triangle (Gram and Schmidt, each direction taken out
// twice, which keeps them square to rounding).
struct Active {
  Unknowns y;
  int size = 0;
  int plane[kUnknowns];
  double force[kUnknowns];  // never negative
  Unknowns q[kUnknowns];
  double r[kUnknowns][kUnknowns];

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
  void take(int taken, const Unknowns& left, const double (&shares)[kUnknowns]) {
    const double length = std::sqrt(dot(left, left));
    for (int k = 0; k < size; ++k) r[k][size] = shares[k];
    r[size][size] = length;
    for (int i = 0; i < kUnknowns; ++i) q[size][i] = left[i] / length;
    plane[size++] = taken;
  }
  void let_go(int gone, const std::vector<HalfPlane>& planes) {
    const int before = size;
    size = gone;
    for (int k = gone + 1; k < before; ++k) {
      force[k - 1] = force[k];
      double shares[kUnknowns];
      const Unknowns left = left_of(planes[plane[k]].slope, shares);
      take(plane[k], left, shares);
    }
  }
  // x with triangle x = right, in place.
  void solve(double (&x)[kUnknowns]) const {
    for (int k = size - 1; k >= 0; --k) {
      for (int j = k + 1; j < size; ++j) x[k] -= r[k][j] * x[j];
      x[k] /= r[k][k];
    }
  }
};

bool depends(const Unknowns& left, const Unknowns& slope) {
  return dot(left, left) <= kParallel * dot(slope, slope);
}

// The active half-plane that lets go first, and at which force.
std::pair<int, double> first_to_let_go(const Active& s, const double (&gives_way)[kUnknowns]) {
  std::pair<int, double> first{-1, kInfinite};
  for (int j = 0; j < s.size; ++j)
    if (gives_way[j] > 1e-12 && s.force[j] / gives_way[j] < first.second)
      first = {j, s.force[j] / gives_way[j]};
  return first;
}

// Takes half-plane `taken` in, letting others go as needed; false if it contradicts the others.
bool take_in(const std::vector<HalfPlane>& planes, int taken, Active& s) {
  const Unknowns& slope = planes[taken].slope;
  double force = 0;
  for (int round = 0; round <= 2 * kUnknowns; ++round) {
    double shares[kUnknowns], gives_way[kUnknowns];
    const Unknowns left = s.left_of(slope, shares);
    std::copy(shares, shares + kUnknowns, gives_way);
    s.solve(gives_way);
    const auto [gone, limit] = first_to_let_go(s, gives_way);
    const bool blocked = depends(left, slope) || s.size == kUnknowns;
    if (blocked && gone < 0) return false;
    const double whole =
        blocked ? kInfinite : (planes[taken].least - dot(slope, s.y)) / dot(left, left);
    const double t = std::min(limit, whole);
    if (!blocked) add(s.y, t, left);
    for (int j = 0; j < s.size; ++j) s.force[j] -= t * gives_way[j];
    force += t;
    if (whole <= limit) {
      s.force[s.size] = force;
      s.take(taken, left, shares);
      return true;
    }
    s.let_go(gone, planes);
  }
  return false;
}

// y and forces for the active half-planes, from the wish.
void stand_on(const Unknowns& wish, const std::vector<HalfPlane>& planes, Active& s) {
  double along[kUnknowns] = {};
  s.y = wish;
  for (int k = 0; k < s.size; ++k) {
    along[k] = planes[s.plane[k]].least;
    for (int j = 0; j < k; ++j) along[k] -= s.r[j][k] * along[j];
    along[k] /= s.r[k][k];
  }
  for (int k = 0; k < s.size; ++k) s.force[k] = along[k] - dot(s.q[k], wish);
  for (int k = 0; k < s.size; ++k) add(s.y, s.force[k], s.q[k]);
  s.solve(s.force);
}

// As many of the half-planes that stopped another move as push back here too: a place to start
// from that the dual method could have come to by itself.
Active started(const Unknowns& wish, const std::vector<HalfPlane>& planes, const Stops& stops) {
  Active s;
  for (int i = 0; i < static_cast<int>(planes.size()) && s.size < stops.count; ++i) {
    const auto end = stops.keys.begin() + stops.count;
    if (planes[i].key == 0 || std::find(stops.keys.begin(), end, planes[i].key) == end) continue;
    double shares[kUnknowns];
    const Unknowns left = s.left_of(planes[i].slope, shares);
    if (!depends(left, planes[i].slope)) s.take(i, left, shares);
  }
  stand_on(wish, planes, s);
  while (s.size > 0) {
    const auto least = std::min_element(s.force, s.force + s.size);
    if (*least >= 0) break;
    s.let_go(static_cast<int>(least - s.force), planes);
    stand_on(wish, planes, s);
  }
  return s;
}

Stops stops_of(const Active& s, const std::vector<HalfPlane>& planes) {
  Stops stops;
  for (int k = 0; k < s.size; ++k) stops.keys[stops.count++] = planes[s.plane[k]].key;
  return stops;
}

}  // namespace

std::optional<Unknowns> nearest_allowed(const Unknowns& wish, const std::vector<HalfPlane>& planes,
                                        Stops* stops) {
  Active s = started(wish, planes, stops ? *stops : Stops{});
  for (int round = 0; round < 1000; ++round) {
    const int worst = most_missed(planes, s.y);
    if (worst < 0) {
      if (stops) *stops = stops_of(s, planes);
      return s.y;
    }
    if (!take_in(planes, worst, s)) return std::nullopt;
  }
  require(false, "the least move is found in a finite number of steps");
  return std::nullopt;
}

}  // namespace nook
