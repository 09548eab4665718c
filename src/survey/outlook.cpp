// Gaussian conditioning on readings not yet taken.
#include "survey/outlook.h"

#include <algorithm>

namespace nook {
namespace {

// Sds before anything is read. Chosen: rooms are built to be square and as long as they look.
double wide_prior(UnknownKind kind) {
  switch (kind) {
    case UnknownKind::angle:
      return 0.03;  // rad
    case UnknownKind::length:
    case UnknownKind::ceiling_height:
      return 30;  // mm
    case UnknownKind::line_height:
      return 10;
    case UnknownKind::point:
      return 300;
    default:
      return 0;
  }
}

bool all_known(const RoomModel& model, const Solution& solution) {
  for (std::size_t j = 0; j < model.unknowns.size(); ++j)
    if (wide_prior(model.unknowns[j].kind) > 0 && !solution.linear->determined(static_cast<int>(j)))
      return false;
  return true;
}

// Where the readings say all that wide priors would, those would not be felt.
std::shared_ptr<const LeastSquares> foreseen(const RoomModel& model, const Solution& solution) {
  if (all_known(model, solution)) return solution.linear;
  Linear linear = linearised(model, solution.rows, solution.state).linear;
  for (std::size_t j = 0; j < model.unknowns.size(); ++j)
    if (linear.prior_sd[j] == 0) linear.prior_sd[j] = wide_prior(model.unknowns[j].kind);
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
