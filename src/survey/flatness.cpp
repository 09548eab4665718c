// Restricted likelihood of the readings under each flatness.
#include "survey/flatness.h"

#include <algorithm>
#include <cmath>

#include "survey/quantiles.h"
#include "survey/room_report.h"

namespace nook {
namespace {

// How often walls are that flat; it decides where the readings hardly tell. mm and share, chosen:
// 2 to 3 mm under a 2 m straightedge pass for a good wall.
struct Candidate {
  double sd, share;
};
constexpr Candidate kCandidates[] = {{1, 0.1}, {2, 0.6}, {4, 0.25}, {8, 0.05}};
constexpr double kSlipRate = 0.01;  // of one reading. Chosen: 0.5 to 1 % per trivial act
constexpr double kSlipSize = 50;    // mm, sd of slips. Chosen

// Log of one plus the odds of a slip somewhere: one slip must not pass for wavy walls. Where the
// readings agree there is none to speak of.
double slip_odds(const LeastSquares& linear, const std::vector<double>& sd) {
  const int dof = static_cast<int>(sd.size()) - linear.rank();
  if (dof <= 0 || linear.chi2() < chi2_quantile(1 - kAlpha, dof)) return 0;
  const std::vector<double> redundancy = linear.redundancy();
  double most = 0, odds = 1;  // over exp(most)
  for (std::size_t i = 0; i < redundancy.size(); ++i) {
    const double u = linear.error()[i] / (sd[i] * sd[i]);  // (W misfit)_i
    const double weight = redundancy[i] / (sd[i] * sd[i]), wide = 1 / (kSlipSize * kSlipSize);
    const double log_odds =
        std::log(kSlipRate) + std::log(wide / (weight + wide)) / 2 + u * u / (2 * (weight + wide));
    const double now = std::max(most, log_odds);
    odds = odds * std::exp(most - now) + std::exp(log_odds - now);
    most = now;
  }
  return most + std::log(odds);
}

}  // namespace

LikelyFlatness likeliest_flatness(const RoomModel& model, const Solution& solution) {
  Linearized problem = linearized(model, solution.rows, solution.state, Fields::left_out);
  add_fields(*solution.linear->whitening(), solution.state, problem);
  const double now = model.surfaces.front().sd;
  const int walls_end = model.surfaces[model.floor_field()].first;
  const bool all_seen = solution.linear->unseen().cols == 0;
  LikelyFlatness best{now, nullptr};
  double most = -1e300;
  for (const auto& [sd, share] : kCandidates) {
    std::shared_ptr<const LeastSquares> linear = solution.linear;
    if (sd != now) {
      const auto whitening =
          std::make_shared<const Whitening>(*linear->whitening(), walls_end, sd / now);
      linear = std::make_shared<LeastSquares>(problem.linear, whitening, all_seen);
    }
    const double likelihood =
        std::log(share) + linear->log_likelihood() + slip_odds(*linear, problem.linear.sd);
    if (likelihood > most) most = likelihood, best = {sd, linear->whitening()};
  }
  return best;
}

}  // namespace nook
