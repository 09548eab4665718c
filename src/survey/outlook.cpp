// Gaussian conditioning on readings not yet taken.
#include "survey/outlook.h"

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
  Linear linear = linearised(model, solution.rows, solution.state).linear;
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
    if (!linear->determined(t.of)) continue;
    all.push_back(t.of);
    takable_.push_back(std::move(t));
  }
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

double Outlook::drop(int reading) const {
  const int c = wanted_ + reading;
  double sum = 0;
  for (int i = 0; i < wanted_; ++i) sum += covariance_(i, c) * covariance_(i, c);
  return sum / (covariance_(c, c) + takable_[reading].noise);
}

int Outlook::best() const {
  int best = -1;
  double most = 0;
  for (int i = 0; i < static_cast<int>(takable_.size()); ++i) {
    const double worth = drop(i) / takable_[i].minutes;
    if (worth > most * (1 + 1e-9)) most = worth, best = i;
  }
  return best;
}

void Outlook::take(int reading) {
  const int c = wanted_ + reading;
  const double seen = covariance_(c, c) + takable_[reading].noise;
  std::vector<double> column(covariance_.rows);
  for (int i = 0; i < covariance_.rows; ++i) column[i] = covariance_(i, c);
  for (int i = 0; i < covariance_.rows; ++i)
    for (int j = 0; j < covariance_.cols; ++j) covariance_(i, j) -= column[i] * column[j] / seen;
}

double Outlook::redundancy(int reading) const {
  const int c = wanted_ + reading;
  return 1 - covariance_(c, c) / takable_[reading].noise;
}

}  // namespace nook
