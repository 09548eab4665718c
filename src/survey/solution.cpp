// Linearizes every reading, solves, steps, and halves a step that makes things worse.
#include "survey/solution.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <utility>

namespace nook {
namespace {

constexpr int kMostSteps = 60;
constexpr double kDone = 1e-10;       // mm (rad): a step that moves no reading by more is the last
constexpr double kNearlyDone = 1e-8;  // mm: after such a step the last one is made with all anew
constexpr double kRenew = 0.02;  // mm: the fields' share is taken afresh after a larger step. A
                                 // smaller one shifts spots by less than 1e-4 of a reach
constexpr double kWorse = 1e-6;  // share by which rounding may seem to make a sum of squares worse

// Adds the slopes of one reading to its row of unknowns.
void spread(const View& view, const Varied& number, double* design) {
  const auto unknowns = static_cast<int>(view.state().unknowns.size());
  for (const Slope& slope : number.slopes)
    if (slope.index < unknowns) design[slope.index] += slope.by;
}

// And to its row of weights.
void spread_fields(const View& view, const Varied& number, double* field) {
  const auto unknowns = static_cast<int>(view.state().unknowns.size());
  for (const Slope& slope : number.slopes) {
    if (slope.index < unknowns) continue;
    const View::FieldSpot& spot = view.spots()[slope.index - unknowns];
    const std::vector<double> functions = view.functions(spot);
    double* own = field + view.model().surfaces[spot.surface].first;
    for (std::size_t k = 0; k < functions.size(); ++k) own[k] += slope.by * functions[k];
  }
}

double squares(const std::vector<double>& values) {
  double sum = 0;
  for (const double v : values) sum += v * v;
  return sum;
}

void add_priors(const RoomModel& model, const State& state, Linearized& out) {
  for (std::size_t j = 0; j < model.unknowns.size(); ++j) {
    const double sd = model.unknowns[j].prior_sd;
    out.linear.prior_sd.push_back(sd);
    out.linear.prior_mean.push_back(sd > 0 ? -state.unknowns[j] : 0);
    if (sd > 0) out.objective += state.unknowns[j] * state.unknowns[j] / (sd * sd);
  }
  out.objective += squares(state.weights);
}

Dense column(const std::vector<double>& values) {
  Dense out(static_cast<int>(values.size()), 1);
  out.cells = values;
  return out;
}

// The most that a step moves a reading.
double largest(const Linear& linear, const Whitening& whitening, const std::vector<double>& x,
               const std::vector<double>& w) {
  const Dense from_field = whitening.times(column(w));
  double most = 0;
  for (int i = 0; i < linear.design.rows; ++i) {
    const double* row = linear.design.row(i);
    const double move = std::inner_product(x.begin(), x.end(), row, 0.0);
    most = std::max(most, std::abs(move + from_field.cells[i] * linear.sd[i]));
  }
  return most;
}

State stepped(const State& from, const std::vector<double>& x, const std::vector<double>& w) {
  State to = from;
  for (std::size_t j = 0; j < x.size(); ++j) to.unknowns[j] += x[j];
  to.weights = w;
  return to;
}

State halfway(const State& a, const State& b) {
  State out = a;
  for (std::size_t j = 0; j < out.unknowns.size(); ++j)
    out.unknowns[j] = (a.unknowns[j] + b.unknowns[j]) / 2;
  for (std::size_t k = 0; k < out.weights.size(); ++k)
    out.weights[k] = (a.weights[k] + b.weights[k]) / 2;
  return out;
}

std::vector<double> minus(const std::vector<double>& a, const std::vector<double>& b) {
  std::vector<double> out(a.size());
  for (std::size_t i = 0; i < a.size(); ++i) out[i] = a[i] - b[i];
  return out;
}

}  // namespace

Rows rows_in_use(const RoomModel& model) {
  Rows rows;
  for (std::size_t i = 0; i < model.observations.size(); ++i)
    if (!model.observations[i].struck) rows.push_back(static_cast<int>(i));
  return rows;
}

Functional functional(const View& view, const Varied& number) {
  Functional out{std::vector<double>(view.state().unknowns.size()),
                 std::vector<double>(view.state().weights.size())};
  spread(view, number, out.x.data());
  spread_fields(view, number, out.w.data());
  return out;
}

double posterior_sd(const Solution& solution, const Functional& functional) {
  if (!solution.linear->determined(functional)) return std::numeric_limits<double>::infinity();
  return std::sqrt(std::max(0.0, solution.linear->covariance({functional})(0, 0)));
}

Linearized linearized(const RoomModel& model, const Rows& rows, const State& state, Fields fields) {
  View view(model, state);
  const auto n = static_cast<int>(rows.size());
  Linearized out;
  out.linear.design = Dense(n, static_cast<int>(state.unknowns.size()));
  if (fields == Fields::taken) out.field = Dense(n, model.weights);
  for (int i = 0; i < n; ++i) {
    const Observation& row = model.observations[rows[i]];
    const Varied number = row.model(view);
    const double error = row.value - number.value, sd = row.worth.sd;
    spread(view, number, out.linear.design.row(i));
    if (fields == Fields::taken) {
      spread_fields(view, number, out.field.row(i));
      for (int k = 0; k < model.weights; ++k) out.field(i, k) /= sd;
    }
    out.error.push_back(error);
    out.linear.sd.push_back(sd);
    out.objective += error * error / (sd * sd);
  }
  out.linear.misfit = out.error;
  add_priors(model, state, out);
  return out;
}

void add_fields(const Whitening& whitening, const State& state, Linearized& problem) {
  const Dense field = whitening.times(column(state.weights));
  for (std::size_t i = 0; i < problem.error.size(); ++i)
    problem.linear.misfit[i] = problem.error[i] + problem.linear.sd[i] * field.cells[i];
}

Solution solve(const RoomModel& model, Rows rows, State start,
               std::shared_ptr<const Whitening> whitening) {
  Solution out{std::move(rows), start, nullptr, false};
  State before = start;
  bool all_seen = false, same = false;  // same: the step is made with the last normal matrix
  double best = std::numeric_limits<double>::infinity(), change = whitening ? 0 : best;
  for (int step = 0; step < kMostSteps && !out.converged; ++step) {
    const Fields fields = change > kRenew ? Fields::taken : Fields::left_out;
    Linearized problem = linearized(model, out.rows, out.state, fields);
    if (out.linear && problem.objective > best * (1 + kWorse) + kWorse) {
      out.state = halfway(before, out.state);
      continue;
    }
    if (fields == Fields::taken)
      whitening = std::make_shared<Whitening>(std::move(problem.field), model.blocks());
    add_fields(*whitening, out.state, problem);
    if (!same) out.linear = std::make_shared<LeastSquares>(problem.linear, whitening, all_seen);
    all_seen = out.linear->unseen().cols == 0;
    const auto [x, w] = same ? out.linear->step(problem.linear)
                             : LeastSquares::Step{out.linear->x(), out.linear->w()};
    const double last =
        std::exchange(change, largest(problem.linear, *whitening, x, minus(w, out.state.weights)));
    out.converged = !same && change < kDone;
    same = all_seen && change <= kRenew && change > kNearlyDone && (!same || change < last / 10);
    best = problem.objective;
    before = out.state;
    out.state = stepped(out.state, x, w);
  }
  return out;
}

}  // namespace nook
