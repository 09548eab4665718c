// Gaussian conditioning on readings not yet taken.
#include "survey/outlook.h"

#include <Eigen/Dense>
#include <algorithm>

#include "survey/loose_marks.h"

namespace nook {
namespace {

// Sds before anything is read. Chosen: rooms are built to be square and as long as they look.
constexpr double kAngle = 0.03, kLength = 30, kLine = 10, kMark = 300;  // rad, mm

double wide_prior(UnknownKind kind) {
  switch (kind) {
    case UnknownKind::angle:
      return kAngle;
    case UnknownKind::length:
    case UnknownKind::ceiling_height:
      return kLength;
    case UnknownKind::line_height:
      return kLine;
    default:
      return 0;
  }
}

// The wide priors of what the readings do not say. A net of marks may move as a whole; where a mark
// is loose all are held, so that it can be seen to move against the others.
std::vector<std::pair<int, double>> unsaid(const RoomModel& model, const Solution& solution) {
  std::vector<std::pair<int, double>> out;
  for (int j = 0; j < static_cast<int>(model.unknowns.size()); ++j) {
    const double sd = wide_prior(model.unknowns[j].kind);
    if (sd > 0 && !solution.linear->determined(j)) out.push_back({j, sd});
  }
  if (!loose_marks(model, solution).empty())
    for (const auto& [name, x] : model.point)
      for (const int axis : {0, 1}) out.push_back({x + axis, kMark});
  return out;
}

std::shared_ptr<const LeastSquares> foreseen(const RoomModel& model, const Solution& solution) {
  const auto priors = unsaid(model, solution);
  if (priors.empty()) return solution.linear;
  Linear linear = linearized(model, solution.rows, solution.state, Fields::left_out).linear;
  for (const auto& [unknown, sd] : priors) linear.prior_sd[unknown] = sd;
  return std::make_shared<LeastSquares>(linear, solution.linear->whitening());
}

}  // namespace

Outlook::Outlook(const RoomModel& model, const Solution& solution, std::vector<Functional> wanted,
                 std::vector<Takable> takable) {
  const auto linear = foreseen(model, solution);
  std::vector<Functional> all;
  for (Functional& f : wanted)
    if (linear->determined(f)) all.push_back(std::move(f));
  wanted_ = static_cast<int>(all.size());
  for (Takable& t : takable) {
    if (!std::all_of(t.of.begin(), t.of.end(),
                     [&](const Functional& f) { return linear->determined(f); }))
      continue;
    first_.push_back(static_cast<int>(all.size()));
    all.insert(all.end(), t.of.begin(), t.of.end());
    takable_.push_back(std::move(t));
  }
  taken_.resize(takable_.size());
  covariance_ = linear->covariance(all);
}

double Outlook::open() const {
  double sum = 0;
  for (int i = 0; i < wanted_; ++i) sum += covariance_(i, i);
  return sum;
}

double Outlook::worst() const {
  double most = 0;
  for (int i = 0; i < wanted_; ++i) most = std::max(most, covariance_(i, i));
  return most;
}

double Outlook::excess() const {
  double sum = 0;
  for (int i = 0; i < wanted_; ++i) sum += std::max(0.0, covariance_(i, i) - 1);
  return sum;
}

// C S^-1 of quantities C against a reading's numbers, S their variance with their errors.
struct Outlook::Gain {
  Eigen::MatrixXd against, by;
};
Outlook::Gain Outlook::gain(int reading, int rows) const {
  const int n = static_cast<int>(takable_[reading].of.size()), c = first_[reading];
  Gain gain{Eigen::MatrixXd(rows, n), {}};
  Eigen::MatrixXd seen(n, n);
  for (int k = 0; k < n; ++k) {
    for (int i = 0; i < rows; ++i) gain.against(i, k) = covariance_(i, c + k);
    for (int j = 0; j < n; ++j)
      seen(j, k) = covariance_(c + j, c + k) + (j == k ? takable_[reading].noise : 0);
  }
  gain.by = seen.ldlt().solve(gain.against.transpose()).transpose();
  return gain;
}

// By how much each wanted variance would fall.
std::vector<double> Outlook::drops(int reading) const {
  const Gain g = gain(reading, wanted_);
  std::vector<double> out(static_cast<std::size_t>(wanted_));
  for (int i = 0; i < wanted_; ++i) out[i] = g.against.row(i).dot(g.by.row(i));
  return out;
}

double Outlook::drop(int reading) const {
  double sum = 0;
  for (const double drop : drops(reading)) sum += drop;
  return sum;
}

double Outlook::relief(int reading) const {
  const std::vector<double> drop = drops(reading);
  double sum = 0;
  for (int i = 0; i < wanted_; ++i)
    sum += std::max(0.0, covariance_(i, i) - 1) - std::max(0.0, covariance_(i, i) - drop[i] - 1);
  return sum;
}

int Outlook::best_by(double (Outlook::*worth)(int) const, bool once) const {
  int best = -1;
  double most = 0;
  for (int i = 0; i < static_cast<int>(takable_.size()); ++i) {
    if (once && taken_[i]) continue;
    const double now = (this->*worth)(i) / takable_[i].minutes;
    if (now > most * (1 + 1e-9)) most = now, best = i;
  }
  return best;
}

int Outlook::best() const {
  return best_by(&Outlook::drop, true);
}

int Outlook::most_relief() const {
  return best_by(&Outlook::relief, false);
}

void Outlook::take(int reading) {
  taken_[reading] = true;
  const Gain g = gain(reading, covariance_.rows);
  const Eigen::MatrixXd less = g.by * g.against.transpose();
  for (int i = 0; i < covariance_.rows; ++i)
    for (int j = 0; j < covariance_.cols; ++j) covariance_(i, j) -= less(i, j);
}

double Outlook::redundancy(int reading) const {
  double least = 1;
  for (int k = 0; k < static_cast<int>(takable_[reading].of.size()); ++k) {
    const int c = first_[reading] + k;
    least = std::min(least, 1 - covariance_(c, c) / takable_[reading].noise);
  }
  return least;
}

}  // namespace nook
