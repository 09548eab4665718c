// Gauss-Newton: the state of a room that its readings make likeliest.
#pragma once

#include <memory>
#include <vector>

#include "survey/least_squares.h"
#include "survey/room_model.h"
#include "survey/view.h"

namespace nook {

/// Readings by their index in model.observations.
using Rows = std::vector<int>;

/// All readings that are not struck.
Rows rows_in_use(const RoomModel& model);

/// The likeliest state and the linear problem there.
struct Solution {
  Rows rows;  // the readings used: row i of `linear` is observation rows[i]
  State state;
  std::shared_ptr<const LeastSquares> linear;
  bool converged = false;
};

/// From `start` on, until the step moves no reading by more than 1e-10 mm. `whitening`, if given,
/// is that of the fields at `start`.
Solution solve(const RoomModel& model, Rows rows, State start,
               std::shared_ptr<const Whitening> whitening = nullptr);

/// A varied number as a function of unknowns and weights. `view` is the one it was made with.
Functional functional(const View& view, const Varied& number);

/// The posterior standard deviation of a functional; infinite where it is not determined.
double posterior_sd(const Solution& solution, const Functional& functional);

/// The linear problem at a state and the sum of squares there.
struct Linearized {
  Linear linear;
  std::vector<double> error;  // reading less model
  Dense field;                // over the sd of each reading
  double objective = 0;
};
/// Fields take longer than all the rest. Left out, `field` is empty and the misfits are the errors,
/// until `add_fields` says what a whitening's fields contribute to them.
enum class Fields { taken, left_out };
Linearized linearized(const RoomModel& model, const Rows& rows, const State& state, Fields fields);
void add_fields(const Whitening& whitening, const State& state, Linearized& problem);

}  // namespace nook
