// One slip at a time, by posterior odds.
#include "survey/suspects.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "base/notation.h"
#include "survey/mud.h"
#include "survey/quantiles.h"
#include "survey/room_report.h"
#include "survey/slips.h"

namespace nook {
namespace {

constexpr int kMostSlips = 4;        // that are looked for in one room. Chosen
constexpr int kMostCandidates = 12;  // that are adjusted anew at each. Chosen
constexpr double kHopeless = 40;     // w^2 below the largest: chance under e^-20. Chosen
constexpr double kTogether = 0.995;  // chance that those named share. Chosen
constexpr double kMostOdds = 1e12;   // printed

// A reading left out, or all repeats of one thing: what the others foretell of it, and the chance
// that it is a slip.
struct Candidate {
  Rows rows;  // observations
  Solution without;
  Measured foretold;    // of the reading; its own error included in the sd
  double log_odds = 0;  // against no slip anywhere
  std::string words;    // of the slip that explains it best; empty = none of the named
  double likely = 0;    // the reading without the slip
};

double log_density(double x, double mean, double sd) {
  const double z = (x - mean) / sd;
  return -z * z / 2 - std::log(sd);
}

Rows without(const Rows& rows, const Rows& some) {
  Rows out;
  for (const int r : rows)
    if (std::find(some.begin(), some.end(), r) == some.end()) out.push_back(r);
  return out;
}

Measured foretold(const RoomModel& model, const Solution& solution, const Observation& reading) {
  View view(model, solution.state);
  const Varied number = reading.model(view);
  const double sd = posterior_sd(solution, functional(view, number));
  return {number.value, std::hypot(sd, reading.worth.sd)};
}

double log_sum(double a, double b) {
  return std::max(a, b) + std::log1p(std::exp(-std::abs(a - b)));
}

// Repeats as one reading, their weighted mean.
Observation joined(const RoomModel& model, const Rows& rows) {
  Observation mean = model.observations[rows.front()];
  double weights = 0, sum = 0;
  for (const int row : rows) {
    const Observation& reading = model.observations[row];
    const double weight = 1 / (reading.worth.sd * reading.worth.sd);
    weights += weight, sum += weight * reading.value;
  }
  mean.value = sum / weights;
  mean.worth.sd = 1 / std::sqrt(weights);
  return mean;
}

// Log likelihood of the mean of some readings as they stand, given the others. By the two
// adjustments: far slips bend the room so much that the readings alone, seen from the room without
// them, do not tell. How the repeats scatter about their mean is left out: no common slip changes
// it.
double as_it_stands(const RoomModel& model, const Solution& with, const Candidate& candidate,
                    const Observation& mean) {
  double sum = with.linear->log_likelihood() - candidate.without.linear->log_likelihood();
  for (const int row : candidate.rows) {
    const Observation& reading = model.observations[row];
    const double z = (reading.value - mean.value) / reading.worth.sd;
    sum += z * z / 2;
  }
  return sum - std::log(mean.worth.sd);
}

// Sums the odds of every slip; remembers the best one. `now`: as_it_stands.
void weigh(const Survey& survey, const Observation& reading, double now, Candidate& candidate) {
  const Measured& m = candidate.foretold;
  const double unit = reading.blade > 0 ? 1 / reading.blade : 1;
  const double wide = std::hypot(m.sd, kOtherSlipSize * unit);
  double best = std::log(kOtherSlipRate) + log_density(reading.value, m.value, wide) - now;
  candidate.log_odds = best;
  candidate.likely = m.value;
  for (const Slip& slip : slips(survey, reading)) {
    const double odds = std::log(slip.rate) + log_density(slip.meant, m.value, m.sd) - now;
    candidate.log_odds = log_sum(candidate.log_odds, odds);
    if (odds <= best) continue;
    best = odds;
    candidate.words = slip.words;
    candidate.likely = slip.meant;
  }
}

// -w^2 and the row of each reading that the others check, largest |w| first.
using Squares = std::vector<std::pair<double, int>>;
Squares squares_of(const RoomModel& model, const Solution& solution,
                   const std::vector<double>& redundancy) {
  Squares squares;
  for (std::size_t i = 0; i < redundancy.size(); ++i) {
    if (redundancy[i] < kNotChecked) continue;
    const double sd = model.observations[solution.rows[i]].worth.sd;
    const double w = solution.linear->error()[i] / (sd * std::sqrt(redundancy[i]));
    squares.push_back({-w * w, solution.rows[i]});
  }
  std::sort(squares.begin(), squares.end());
  return squares;
}

// Whether the largest |w| is one that not one room in a thousand has among so many (Bonferroni).
bool one_stands_out(const RoomModel& model, const Solution& solution) {
  const Squares squares = squares_of(model, solution, solution.linear->redundancy());
  if (squares.empty()) return false;
  const double limit = normal_quantile(1 - kAlpha / (2 * static_cast<double>(squares.size())));
  return -squares.front().first > limit * limit;
}

bool agree(const RoomModel& model, const Solution& solution, const std::vector<int>& group) {
  const Observation& one = model.observations[solution.rows[group.front()]];
  return std::all_of(group.begin(), group.end(), [&](int i) {
    const Observation& other = model.observations[solution.rows[i]];
    return std::abs(other.value - one.value) < w_limit() * std::hypot(one.worth.sd, other.worth.sd);
  });
}

// Readings in use that measured the same thing and say the same, as indices into the solution's
// rows: what was typed twice has its slip twice.
std::vector<std::vector<int>> repeats(const RoomModel& model, const Solution& solution) {
  View view(model, solution.state);
  std::map<std::tuple<int, int, double, double>, std::vector<int>> same;
  for (std::size_t i = 0; i < solution.rows.size(); ++i) {
    const Observation& reading = model.observations[solution.rows[i]];
    same[{reading.wall, reading.corner, reading.blade, reading.model(view).value}].push_back(
        static_cast<int>(i));
  }
  std::vector<std::vector<int>> out;
  for (auto& [thing, group] : same)
    if (group.size() > 1 && agree(model, solution, group)) out.push_back(std::move(group));
  return out;
}

// w^2 of the mean of repeats. What ties each to the rest, sd^2 (1 - r), is the same for all;
// nothing where the others do not check them.
double joint_square(const RoomModel& model, const Solution& solution,
                    const std::vector<double>& redundancy, const std::vector<int>& group) {
  const auto variance = [&](int i) {
    return std::pow(model.observations[solution.rows[i]].worth.sd, 2);
  };
  double weights = 0, sum = 0;
  for (const int i : group) {
    weights += 1 / variance(i);
    sum += solution.linear->error()[i] / variance(i);
  }
  const double tied = variance(group.front()) * (1 - redundancy[group.front()]) * weights;
  return 1 - tied > kNotChecked ? sum * sum / (weights * (1 - tied)) : 0;
}

// What is worth trying: each reading by itself and repeats together, largest |w| first.
std::vector<Rows> promising(const RoomModel& model, const Solution& solution) {
  const std::vector<double> redundancy = solution.linear->redundancy();
  std::vector<std::pair<double, Rows>> tries;
  for (const auto& [square, row] : squares_of(model, solution, redundancy))
    tries.push_back({square, {row}});
  for (const std::vector<int>& group : repeats(model, solution)) {
    tries.push_back({-joint_square(model, solution, redundancy, group), {}});
    for (const int i : group) tries.back().second.push_back(solution.rows[i]);
  }
  std::stable_sort(tries.begin(), tries.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<Rows> out;
  for (auto& [square, rows] : tries) {
    const bool over = -square > w_limit() * w_limit();
    if (over && square - tries.front().first < kHopeless && out.size() < kMostCandidates)
      out.push_back(std::move(rows));
  }
  return out;
}

std::vector<Candidate> candidates(const RoomModel& model, const Solution& solution) {
  std::vector<Candidate> out;
  for (Rows& rows : promising(model, solution)) {
    const Observation mean = joined(model, rows);
    Candidate candidate;
    candidate.rows = std::move(rows);
    candidate.without = solve(model, without(solution.rows, candidate.rows), solution.state);
    candidate.foretold = foretold(model, candidate.without, mean);
    if (!std::isfinite(candidate.foretold.sd)) continue;
    weigh(*model.survey, mean, as_it_stands(model, solution, candidate, mean), candidate);
    out.push_back(std::move(candidate));
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const Candidate& a, const Candidate& b) { return a.log_odds > b.log_odds; });
  return out;
}

double chi2_limit(const Solution& solution) {
  const int dof = static_cast<int>(solution.rows.size()) - solution.linear->rank();
  return dof > 0 ? chi2_quantile(1 - kAlpha, dof) : 0;
}

bool passes(const Solution& solution) {
  return solution.linear->chi2() <= chi2_limit(solution) + 1e-9;
}

std::string said(const RoomModel& model, const Observation& reading, double value) {
  if (reading.blade > 0) return fmt::format("{:.1f} degrees", in_degrees({value}));
  return with_unit(millimetres(value), model.survey->said());
}

std::string give_or_take_of(const RoomModel& model, const Observation& reading, double sd) {
  if (reading.blade > 0) return fmt::format("{:.1f}", in_degrees({kTwoSided95 * sd}));
  return give_or_take(millimetres(kTwoSided95 * sd), model.survey->said());
}

std::string reason(const RoomModel& model, const Candidate& candidate, bool alone) {
  const Observation reading = joined(model, candidate.rows);
  std::string text = fmt::format(
      "{}{}; the other readings say {}, give or take {}", said(model, reading, reading.value),
      candidate.rows.size() > 1 ? " each time" : "", said(model, reading, candidate.foretold.value),
      give_or_take_of(model, reading, candidate.foretold.sd));
  if (!candidate.words.empty()) text += ": perhaps " + candidate.words;
  return alone ? text : text + " (these cannot be told apart)";
}

void add_once(std::vector<std::string>& ids, const std::string& id) {
  if (std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
}

Suspect suspect_of(const RoomModel& model, const std::vector<Candidate>& candidates) {
  // Odds over those of the likeliest.
  const double most = candidates.front().log_odds;
  double slip = 0, named = 0;
  for (const Candidate& c : candidates) slip += std::exp(c.log_odds - most);
  Suspect suspect;
  for (const Candidate& c : candidates) {
    if (named >= kTogether * slip) break;
    for (const int row : c.rows) add_once(suspect.ids, model.observations[row].id);
    named += std::exp(c.log_odds - most);
  }
  const Candidate& likeliest = candidates.front();
  const Observation& first = model.observations[likeliest.rows.front()];
  const bool alone = suspect.ids.size() == likeliest.rows.size();
  suspect.repeats = alone && likeliest.rows.size() > 1;
  suspect.reason = reason(model, likeliest, alone);
  suspect.likely_mm = candidates.front().likely * (first.blade > 0 ? first.blade : 1);
  suspect.odds = std::min(kMostOdds, named / (slip - named + std::exp(-most)));
  return suspect;
}

}  // namespace

Solution add_suspects(const RoomModel& model, const Solution& solution, RoomReport& report) {
  Solution now = solution;
  const bool hidden = passes(now) && one_stands_out(model, now);
  for (int slip = 0; slip < kMostSlips && (!passes(now) || (hidden && slip == 0)); ++slip) {
    std::vector<Candidate> found = candidates(model, now);
    double slip_odds = 0;
    for (const Candidate& c : found) slip_odds = log_sum(slip_odds, c.log_odds);
    if (const auto mud = mud_suspect(model, now); mud && mud->log_odds > slip_odds) {
      report.suspects.push_back(mud->suspect);
      return now;
    }
    if (found.empty()) {
      report.missing.push_back(
          {"the readings disagree all over and none stands out: hold a level and a straightedge to "
           "the walls again, they may be rougher than stated",
           false});
      return now;
    }
    report.suspects.push_back(suspect_of(model, found));
    now = std::move(found.front().without);
  }
  return now;
}

}  // namespace nook
