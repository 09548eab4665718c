// The linear problem at a state: its slopes against differences of the readings, with and without
// fields.
#include <catch2/catch.hpp>
#include <cmath>

#include "survey/room_model.h"
#include "survey/solution.h"
#include "true_room.h"

using namespace nook;
using namespace nook::test;
using Catch::WithinAbs;

namespace {

// A careful survey with a level line, an angle finder and a square besides.
RoomModel model_of(std::uint64_t seed) {
  SurveyBuilder b;
  b.survey = careful_survey(seed, 2, 1);
  b.drop(0, 400, 150, 1003).drop(1, 700, 300, 1001).rise(0, 500, 200, 1400);
  b.angle(0, 90.8, 300).square(0, 600, 7).length(0, {3000});
  return room_model(std::make_shared<Survey>(b.survey), 0, 2);
}

std::vector<double> errors(const RoomModel& model, const State& state) {
  return linearized(model, rows_in_use(model), state, Fields::left_out).error;
}

// How the model of each reading changes with one number of the state.
template <class Number>
std::vector<double> slopes(const RoomModel& model, State state, Number number) {
  constexpr double kStep = 1e-5;
  const double middle = number(state);
  number(state) = middle + kStep;
  const std::vector<double> above = errors(model, state);
  number(state) = middle - kStep;
  std::vector<double> out = errors(model, state);
  for (std::size_t i = 0; i < out.size(); ++i) out[i] = (out[i] - above[i]) / (2 * kStep);
  return out;
}

}  // namespace

TEST_CASE("linearized: slopes are the differences of the readings", "[property]") {
  const RoomModel model = model_of(31);
  const State flat = first_state(model);  // without humps a spot may move along the wall
  const Linearized problem = linearized(model, rows_in_use(model), flat, Fields::taken);
  const auto n = problem.error.size();
  REQUIRE(n > 30);
  for (std::size_t j = 0; j < model.unknowns.size(); ++j) {
    const auto by = slopes(model, flat, [j](State& s) -> double& { return s.unknowns[j]; });
    for (std::size_t i = 0; i < n; ++i) {
      INFO("reading " << i << ", unknown " << j);
      const double slope = problem.linear.design(static_cast<int>(i), static_cast<int>(j));
      CHECK_THAT(by[i], WithinAbs(slope, 1e-6 * (1 + std::abs(slope))));
    }
  }
  for (int k = 0; k < model.weights; k += 11) {
    const auto by = slopes(
        model, flat, [k](State& s) -> double& { return s.weights[static_cast<std::size_t>(k)]; });
    for (std::size_t i = 0; i < n; ++i) {
      INFO("reading " << i << ", weight " << k);
      const int row = static_cast<int>(i);
      CHECK_THAT(by[i], WithinAbs(problem.field(row, k) * problem.linear.sd[i], 1e-6));
    }
  }
}

TEST_CASE("linearized: fields left out and added from the whitening are the fields taken") {
  const RoomModel model = model_of(32);
  const Rows rows = rows_in_use(model);
  State state = first_state(model);
  Random random(32);
  for (double& w : state.weights) w = gaussian(random);
  const Linearized taken = linearized(model, rows, state, Fields::taken);
  Linearized left_out = linearized(model, rows, state, Fields::left_out);
  CHECK(left_out.field.cells.empty());
  CHECK(left_out.linear.design.cells == taken.linear.design.cells);
  CHECK(left_out.error == taken.error);
  CHECK(left_out.objective == taken.objective);

  add_fields(Whitening(taken.field, model.blocks()), state, left_out);
  double most = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    double field = 0;
    for (int k = 0; k < model.weights; ++k)
      field += taken.field(static_cast<int>(i), k) * state.weights[static_cast<std::size_t>(k)];
    most = std::max(most, std::abs(field));
    CHECK_THAT(left_out.linear.misfit[i],
               WithinAbs(taken.error[i] + taken.linear.sd[i] * field, 1e-9));
  }
  CHECK(most > 0.1);  // there is something to add
}

TEST_CASE("solution: a step more leads nowhere", "[property]") {
  for (const std::uint64_t seed : {33, 34, 35}) {
    INFO("seed " << seed);
    const RoomModel model = model_of(seed);
    const Solution solution = solve(model, rows_in_use(model), first_state(model));
    REQUIRE(solution.converged);
    // All anew at the end, its fields too: the gradient of the whole sum of squares is nothing.
    const Solution again = solve(model, solution.rows, solution.state);
    REQUIRE(again.converged);
    for (std::size_t j = 0; j < model.unknowns.size(); ++j)
      CHECK_THAT(again.state.unknowns[j], WithinAbs(solution.state.unknowns[j], 1e-4));
    CHECK_THAT(again.linear->chi2(), WithinAbs(solution.linear->chi2(), 1e-4));
  }
}
