// Linearises every reading, solves, steps, and halves a step that makes things worse.
#include "survey/solution.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace nook {
namespace {

constexpr int kMostSteps = 60;
constexpr double kDone = 1e-10;  // mm (rad): a step that moves no reading by more is the last
constexpr double kRenew = 0.02;  // mm: the fields' share is taken afresh after a larger step. A
                                 // smaller one shifts spots by less than 1e-4 of a reach
constexpr double kWorse = 1e-6;  // share by which rounding may seem to make a sum of squares worse

// Adds the slopes of one reading to its rows; returns what the field contributes, mm.
double spread(const View& view, const State& state, const Varied& number, double* design,
              double* field) {
  const auto unknowns = static_cast<int>(state.unknowns.size());
  double contributed = 0;
  for (const Slope& slope : number.slopes) {
    if (slope.index < unknowns) {
      design[slope.index] += slope.by;
      continue;
    }
    const View::FieldSpot& spot = view.spots()[slope.index - unknowns];
    const int first = view.model().surfaces[spot.surface].first;
    for (std::size_t k = 0; k < spot.functions.size(); ++k) {
      const double by = slope.by * spot.functions[k];
      field[first + k] += by;
      contributed += by * state.weights[first + k];
    }
  }
  return contributed;
}

double squares(const std::vector<double>& values) {
  double sum = 0;
  for (const double v : values) sum += v * v;
  return sum;
}

void add_priors(const RoomModel& model, const State& state, Linearised& out) {
  for (std::size_t j = 0; j < model.unknowns.size(); ++j) {
    const double sd = model.unknowns[j].prior_sd;
    out.linear.prior_sd.push_back(sd);
    out.linear.prior_mean.push_back(sd > 0 ? -state.unknowns[j] : 0);
    if (sd > 0) out.objective += state.unknowns[j] * state.unknowns[j] / (sd * sd);
  }
  out.objective += squares(state.weights);
}

double largest(const Linearised& problem, const std::vector<double>& x,
               const std::vector<double>& w) {
  double most = 0;
  for (int i = 0; i < problem.linear.design.rows; ++i) {
    double move = 0, from_field = 0;
    for (std::size_t j = 0; j < x.size(); ++j) move += problem.linear.design(i, j) * x[j];
    for (std::size_t k = 0; k < w.size(); ++k) from_field += problem.field(i, k) * w[k];
    most = std::max(most, std::abs(move + from_field * problem.linear.sd[i]));
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

// The misfits, with what the fields contribute as the whitening has it.
void take_field_from(const Whitening& whitening, const State& state, Linearised& problem) {
  Table weights(static_cast<int>(state.weights.size()), 1);
  weights.cells = state.weights;
  const Table field = whitening.times(weights);
  for (std::size_t i = 0; i < problem.error.size(); ++i)
    problem.linear.misfit[i] = problem.error[i] + problem.linear.sd[i] * field.cells[i];
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
  spread(view, view.state(), number, out.x.data(), out.w.data());
  return out;
}

double posterior_sd(const Solution& solution, const Functional& functional) {
  if (!solution.linear->determined(functional)) return std::numeric_limits<double>::infinity();
  return std::sqrt(std::max(0.0, solution.linear->covariance({functional})(0, 0)));
}

Linearised linearised(const RoomModel& model, const Rows& rows, const State& state) {
  View view(model, state);
  const auto n = static_cast<int>(rows.size());
  Linearised out;
  out.linear.design = Table(n, static_cast<int>(state.unknowns.size()));
  out.field = Table(n, model.weights);
  for (int i = 0; i < n; ++i) {
    const Observation& row = model.observations[rows[i]];
    const Varied number = row.model(view);
    double* field = out.field.row(i);
    const double contributed = spread(view, state, number, out.linear.design.row(i), field);
    const double error = row.value - number.value, sd = row.worth.sd;
    out.error.push_back(error);
    out.linear.misfit.push_back(error + contributed);
    out.linear.sd.push_back(sd);
    out.objective += error * error / (sd * sd);
    for (int k = 0; k < model.weights; ++k) field[k] /= sd;
  }
  add_priors(model, state, out);
  return out;
}

Solution solve(const RoomModel& model, Rows rows, State start,
               std::shared_ptr<const Whitening> whitening) {
  Solution out{std::move(rows), start, nullptr, false};
  State before = start;
  bool all_seen = false;
  double best = std::numeric_limits<double>::infinity(), change = whitening ? 0 : best;
  for (int step = 0; step < kMostSteps && !out.converged; ++step) {
    Linearised problem = linearised(model, out.rows, out.state);
    if (out.linear && problem.objective > best * (1 + kWorse) + kWorse) {
      out.state = halfway(before, out.state);
      continue;
    }
    if (change > kRenew) whitening = std::make_shared<Whitening>(problem.field, model.blocks());
    take_field_from(*whitening, out.state, problem);
    auto linear = std::make_shared<LeastSquares>(problem.linear, whitening, all_seen);
    all_seen = linear->unseen().cols == 0;
    change = largest(problem, linear->x(), minus(linear->w(), out.state.weights));
    out.converged = change < kDone;
    best = problem.objective;
    before = out.state;
    out.state = stepped(out.state, linear->x(), linear->w());
    out.linear = std::move(linear);
  }
  return out;
}

}  // namespace nook
