// Classical scaling of shortest paths, majorisation, and folding.
#include "survey/mark_places.h"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <limits>

namespace nook {
namespace {

constexpr double kFar = 1e18;     // mm^2 is still finite
constexpr int kSweeps = 400;      // of majorisation; chosen
constexpr double kBetter = 0.99;  // share of the stress below which another fold is better; chosen

std::size_t size(const MarkNet& net) {
  return net.at.size();
}

std::vector<std::vector<double>> shortest_paths(const MarkNet& net) {
  const std::size_t n = size(net);
  std::vector<std::vector<double>> d(n, std::vector<double>(n, kFar));
  for (std::size_t i = 0; i < n; ++i) d[i][i] = 0;
  const auto tie = [&](int a, int b, double length) {
    d[a][b] = d[b][a] = std::min(d[a][b], length);
  };
  for (const Tie& t : net.ties) tie(t.a, t.b, t.distance);
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (net.fixed[i] && net.fixed[j]) tie(i, j, norm(net.at[i] - net.at[j]));
  for (std::size_t k = 0; k < n; ++k)
    for (std::size_t i = 0; i < n; ++i)
      for (std::size_t j = 0; j < n; ++j) d[i][j] = std::min(d[i][j], d[i][k] + d[k][j]);
  return d;
}

using Members = std::vector<int>;

// Marks that are tied together, directly or not.
std::vector<Members> islands(const std::vector<std::vector<double>>& paths) {
  std::vector<Members> out;
  std::vector<bool> seen(paths.size());
  for (std::size_t i = 0; i < paths.size(); ++i) {
    if (seen[i]) continue;
    out.emplace_back();
    for (std::size_t j = 0; j < paths.size(); ++j)
      if (paths[i][j] < kFar) out.back().push_back(static_cast<int>(j)), seen[j] = true;
  }
  return out;
}

// Coordinates whose distances come closest to the paths (in inner products).
std::vector<Vec2> scaled(const std::vector<std::vector<double>>& paths, const Members& marks) {
  const auto n = static_cast<Eigen::Index>(marks.size());
  Eigen::MatrixXd squares(n, n);
  for (Eigen::Index i = 0; i < n; ++i)
    for (Eigen::Index j = 0; j < n; ++j) {
      const double d = paths[marks[i]][marks[j]];
      squares(i, j) = d * d;
    }
  const Eigen::MatrixXd center =
      Eigen::MatrixXd::Identity(n, n) - Eigen::MatrixXd::Constant(n, n, 1.0 / double(n));
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(-0.5 * center * squares * center);
  std::vector<Vec2> out(marks.size());
  const auto axis = [&](Eigen::Index i, Eigen::Index k) {
    if (k < 0) return 0.0;
    return eigen.eigenvectors()(i, k) * std::sqrt(std::max(0.0, eigen.eigenvalues()[k]));
  };
  for (Eigen::Index i = 0; i < n; ++i) out[i] = {axis(i, n - 1), axis(i, n - 2)};
  return out;
}

Vec2 mean(const std::vector<Vec2>& points) {
  Vec2 sum;
  for (const Vec2 p : points) sum = sum + p;
  return points.empty() ? sum : (1.0 / double(points.size())) * sum;
}

Vec2 turned(Vec2 p, Vec2 by) {
  return {p.x * by.x - p.y * by.y, p.x * by.y + p.y * by.x};
}

// Turns and moves `points` so that those in `anchors` come as near as they can to their places.
struct Anchor {
  std::size_t index;
  Vec2 at;
};
void lay_onto(std::vector<Vec2>& points, const std::vector<Anchor>& anchors) {
  if (anchors.empty()) return;
  std::vector<Vec2> from, to;
  for (const Anchor& a : anchors) from.push_back(points[a.index]), to.push_back(a.at);
  const Vec2 from_mean = mean(from), to_mean = mean(to);
  Vec2 turn;
  for (std::size_t i = 0; i < from.size(); ++i) {
    const Vec2 p = from[i] - from_mean, q = to[i] - to_mean;
    turn = turn + Vec2{dot(p, q), cross(p, q)};
  }
  const double length = norm(turn);
  turn = length > 0 ? (1 / length) * turn : Vec2{1, 0};
  for (Vec2& p : points) p = to_mean + turned(p - from_mean, turn);
}

void move_one(MarkNet& net, int mark, const std::vector<std::vector<Tie>>& ties) {
  Vec2 sum;
  for (const Tie& tie : ties[mark]) {
    const Vec2 from = net.at[mark] - net.at[tie.b];
    const double length = norm(from);
    const Vec2 way = length > 0 ? (tie.distance / length) * from : Vec2{tie.distance, 0};
    sum = sum + net.at[tie.b] + way;
  }
  net.at[mark] = (1.0 / double(ties[mark].size())) * sum;
}

std::vector<std::vector<Tie>> ties_of_each(const MarkNet& net) {
  std::vector<std::vector<Tie>> out(size(net));
  for (const Tie& t : net.ties) {
    out[t.a].push_back(t);
    out[t.b].push_back({t.b, t.a, t.distance});
  }
  return out;
}

void settle(MarkNet& net, const std::vector<std::vector<Tie>>& ties) {
  double before = std::numeric_limits<double>::infinity();
  for (int sweep = 0; sweep < kSweeps; ++sweep) {
    for (std::size_t i = 0; i < size(net); ++i)
      if (!net.fixed[i] && !ties[i].empty()) move_one(net, static_cast<int>(i), ties);
    const double now = stress(net);
    if (now > before * (1 - 1e-4)) return;
    before = now;
  }
}

// Folds a mark over each line between two of its neighbors; keeps the best net.
bool fold_one(MarkNet& net, int mark, const std::vector<std::vector<Tie>>& ties) {
  MarkNet best = net;
  double least = stress(net) * kBetter;
  for (const Tie& a : ties[mark])
    for (const Tie& b : ties[mark]) {
      if (a.b >= b.b || norm(net.at[a.b] - net.at[b.b]) == 0) continue;
      MarkNet trial = net;
      trial.at[mark] = mirrored(net.at[mark], net.at[a.b], net.at[b.b]);
      settle(trial, ties);
      if (stress(trial) < least) least = stress(trial), best = trial;
    }
  const bool better = least < stress(net) * kBetter;
  net = std::move(best);
  return better;
}

void unfold(MarkNet& net, const std::vector<std::vector<Tie>>& ties) {
  constexpr double kFits = 1e-6;  // mm^2: nothing left to gain
  for (std::size_t round = 0; round < size(net); ++round) {
    bool better = false;
    for (std::size_t i = 0; i < size(net); ++i)
      if (!net.fixed[i] && stress(net) > kFits) better |= fold_one(net, static_cast<int>(i), ties);
    if (!better) return;
  }
}

void place_island(MarkNet& net, const std::vector<std::vector<double>>& paths, const Members& marks,
                  bool flip) {
  std::vector<Vec2> points = scaled(paths, marks);
  std::vector<Anchor> anchors;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    if (flip) points[i].y = -points[i].y;
    if (net.fixed[marks[i]]) anchors.push_back({i, net.at[marks[i]]});
  }
  lay_onto(points, anchors);
  for (std::size_t i = 0; i < marks.size(); ++i)
    if (!net.fixed[marks[i]]) net.at[marks[i]] = points[i];
}

}  // namespace

Vec2 mirrored(Vec2 p, Vec2 a, Vec2 b) {
  const Vec2 line = b - a;
  const double along = dot(p - a, line) / dot(line, line);
  const Vec2 foot = a + along * line;
  return foot + (foot - p);
}

double stress(const MarkNet& net) {
  double sum = 0;
  for (const Tie& t : net.ties) {
    const double off = norm(net.at[t.a] - net.at[t.b]) - t.distance;
    sum += off * off;
  }
  return sum;
}

void place_marks(MarkNet& net) {
  const auto paths = shortest_paths(net);
  const auto ties = ties_of_each(net);
  for (const Members& marks : islands(paths)) {
    MarkNet other = net;
    place_island(net, paths, marks, false);
    place_island(other, paths, marks, true);
    settle(net, ties);
    settle(other, ties);
    if (stress(other) < stress(net) * kBetter) net = std::move(other);
  }
  unfold(net, ties);
}

}  // namespace nook
