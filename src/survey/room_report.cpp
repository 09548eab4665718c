// Statistics of the adjusted room.
#include "survey/room_report.h"

#include <cmath>

#include "room/counted.h"
#include "survey/observations.h"
#include "survey/quantiles.h"
#include "survey/reading_names.h"

namespace nook {
namespace {

// The posterior of one unknown.
Measured measured(const RoomModel& model, const Solution& solution, int index, double unit) {
  Functional one{std::vector<double>(model.unknowns.size()), std::vector<double>(model.weights)};
  one.x[index] = unit;
  return {solution.state.unknowns[index] * unit, posterior_sd(solution, one)};
}

ReadingReport plain_report(const Observation& row, double predicted) {
  const double unit = row.blade > 0 ? row.blade : 1;
  ReadingReport out;
  out.id = row.id;
  out.given = row.given;
  out.value_mm = row.value * unit;
  out.sd_mm = std::hypot(row.worth.sd, row.worth.tape) * unit;
  out.adjusted_mm = predicted * unit;
  out.residual_mm = (predicted - row.value) * unit;
  out.struck = row.struck;
  out.line = row.place.line;
  out.wall = row.wall;
  out.corner = row.corner;
  if (row.blade > 0) out.blade_mm = row.blade;
  return out;
}

// Statistics of a reading in use. Var(adjusted) = sigma^2 (1 - r).
void add_statistics(const Observation& row, double redundancy, ReadingReport& out) {
  const double sd = row.worth.sd * (row.blade > 0 ? row.blade : 1);
  out.redundancy = redundancy;
  out.adjusted_sd_mm = sd * std::sqrt(std::max(0.0, 1 - redundancy));
  if (redundancy < kNotChecked) return;
  out.w = out.residual_mm / (sd * std::sqrt(redundancy));
  out.smallest_slip_mm = noncentrality() * sd / std::sqrt(redundancy);
}

void add_readings(const RoomModel& model, const Solution& solution, RoomReport& report) {
  View view(model, solution.state);
  const std::vector<double> redundancy = solution.linear->redundancy();
  std::size_t used = 0;
  for (std::size_t i = 0; i < model.observations.size(); ++i) {
    const Observation& row = model.observations[i];
    const Varied predicted = row.model(view);
    ReadingReport reading = plain_report(row, predicted.value);
    if (used < solution.rows.size() && solution.rows[used] == static_cast<int>(i)) {
      add_statistics(row, redundancy[used++], reading);
      if (reading.redundancy < kUncheckable) report.uncheckable.push_back(row.id);
    } else {
      const double unit = row.blade > 0 ? row.blade : 1;
      reading.adjusted_sd_mm = unit * posterior_sd(solution, functional(view, predicted));
    }
    report.readings.push_back(std::move(reading));
  }
}

// The largest stray from flat, on a grid that no hump slips through.
double hump_of(const WallShape& wall) {
  if (!wall.field.basis) return 0;
  constexpr double kTop = 2440;  // mm; higher up nothing is built. Chosen
  const double step = wall.field.basis->reach() / 2;
  double most = 0;
  for (double a = 0; a <= wall.length; a += step)
    for (double z = 0; z <= kTop; z += step)
      if (const double hump = wall.hump_at(a, z); std::abs(hump) > std::abs(most)) most = hump;
  return most;
}

std::optional<Measured> length_of(const RoomModel& model, const Solution& solution, int wall) {
  if (model.length[wall] < 0) {
    for (std::size_t i = 0; i < model.unknowns.size(); ++i)
      if (model.unknowns[i].kind == UnknownKind::extent && model.unknowns[i].of == wall)
        return measured(model, solution, static_cast<int>(i), 1);
    return {};
  }
  View view(model, solution.state);
  const Height height = model.survey->walls[wall].length_height.value_or(kUnsaidHeight);
  const double z = view.z_of(height, wall, model.assumed_length[wall] / 2);
  const Varied length =
      view.unknown(model.length[wall]) - view.corner(wall - 1, z).right - view.corner(wall, z).left;
  return Measured{length.value, posterior_sd(solution, functional(view, length))};
}

void add_room(const RoomModel& model, const Solution& solution, const RoomShape& room,
              RoomReport& report) {
  for (int k = 0; k < model.corners(); ++k) {
    const Measured angle = measured(model, solution, model.angle[k], in_degrees({1}));
    report.corners.push_back({{room.walls[k].name, room.walls[k + 1].name}, angle});
  }
  for (int k = 0; k < model.walls(); ++k) {
    WallReport wall;
    wall.name = room.walls[k].name;
    wall.length_mm = length_of(model, solution, k);
    wall.lean_mm_per_m = measured(model, solution, model.lean[k], 1000);
    wall.hump_mm = hump_of(room.walls[k]);
    report.walls.push_back(std::move(wall));
  }
}

}  // namespace

double noncentrality() {
  static const double value = normal_quantile(1 - kAlpha / 2) + normal_quantile(kPower);
  return value;
}

double w_limit() {
  static const double value = normal_quantile(1 - kAlpha / 2);
  return value;
}

std::optional<double> w_limit_by_scatter(const RoomReport& report) {
  constexpr int kLeastFreedom = 5;  // chosen
  if (report.dof < kLeastFreedom) return {};
  return tau_limit(kAlpha, report.dof) * std::sqrt(report.chi2 / report.dof);
}

RoomReport room_report(const RoomModel& model, const Solution& solution, const RoomShape& room) {
  RoomReport report;
  add_room(model, solution, room, report);
  add_readings(model, solution, report);
  report.names = reading_names(*model.survey);
  const Flatness& flatness = model.survey->flatness;
  report.flatness_from_file = flatness.sd.has_value();
  if (model.walls() > 0) report.flatness_sd_mm = model.surfaces.front().sd;
  report.flatness_reach_mm = wall_reach(*model.survey);
  report.chi2 = solution.linear->chi2();
  report.dof = static_cast<int>(solution.rows.size()) - solution.linear->rank();
  report.chi2_limit = report.dof > 0 ? chi2_quantile(1 - kAlpha, report.dof) : 0;
  return report;
}

}  // namespace nook
