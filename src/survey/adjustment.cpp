// From readings to the room: flatness, solution, report, draws, foretold distances.
#include "survey/adjustment.h"

#include "survey/draw.h"
#include "survey/expected.h"
#include "survey/facts.h"
#include "survey/flatness.h"
#include "survey/loose_marks.h"
#include "survey/measure_next.h"
#include "survey/missing.h"
#include "survey/parts.h"
#include "survey/room_report.h"
#include "survey/suspects.h"

namespace nook {
namespace {

constexpr double kFirstFlatness = 2;  // mm, before the readings choose. Chosen

// The state with its walls' weights scaled to another flatness, so that the walls stay as they are.
State with_flatness(const RoomModel& model, State state, double from, double to) {
  const int walls_end = model.surfaces[model.floor_field()].first;
  for (int k = 0; k < walls_end; ++k) state.weights[k] *= from / to;
  return state;
}

Solution solved(RoomModel& model) {
  Solution solution = solve(model, rows_in_use(model), first_state(model));
  if (model.survey->flatness.sd || model.walls() == 0) return solution;
  const auto [sd, whitening] = likeliest_flatness(model, solution);
  if (sd == kFirstFlatness) return solution;
  set_flatness(model, sd);
  State start = with_flatness(model, std::move(solution.state), kFirstFlatness, sd);
  return solve(model, std::move(solution.rows), std::move(start), whitening);
}

}  // namespace

Adjustment::Adjustment(std::shared_ptr<const Parts> parts) : parts_(std::move(parts)) {}

bool Adjustment::complete() const {
  return parts_->complete;
}
const RoomShape& Adjustment::room() const {
  return parts_->room;
}
const RoomReport& Adjustment::report() const {
  return parts_->report;
}

std::vector<RoomShape> Adjustment::draws(int count, std::uint64_t seed) const {
  return draw_rooms(parts_->model, parts_->solution, count, seed);
}

tl::expected<Measured, std::string> Adjustment::expected_diagonal(int corner, double first,
                                                                  double second,
                                                                  double height) const {
  return nook::expected_diagonal(parts_->model, parts_->solution, {corner, first, second, height});
}

tl::expected<Measured, std::string> Adjustment::expected_span(const std::string& a,
                                                              const std::string& b) const {
  return nook::expected_span(parts_->model, parts_->solution, a, b);
}

std::vector<NextReading> Adjustment::measure_next(const std::vector<Undecided>& undecided,
                                                  int count) const {
  return nook::measure_next(parts_->model, parts_->solution, undecided, count);
}

double Adjustment::variance(const Undecided& undecided) const {
  View view(parts_->model, parts_->solution.state);
  const double sd = posterior_sd(parts_->solution, functional(view, undecided));
  return sd * sd;
}

Adjustment adjust(const Survey& survey, int origin_corner) {
  auto parts = std::make_shared<Adjustment::Parts>();
  parts->survey = std::make_shared<Survey>(survey);
  const double flatness = survey.flatness.sd ? survey.flatness.sd->mm : kFirstFlatness;
  parts->model = room_model(parts->survey, origin_corner, flatness);
  parts->solution = solved(parts->model);
  parts->room = room_shape(parts->model, parts->solution.state);
  parts->report = room_report(parts->model, parts->solution, parts->room);
  parts->report.facts = facts_beside(survey);
  const Solution sound = add_suspects(parts->model, parts->solution, parts->report);
  std::vector<Missing> gaps = missing(parts->model, parts->solution, sound);
  gaps.insert(gaps.end(), parts->report.missing.begin(), parts->report.missing.end());
  parts->report.missing = std::move(gaps);
  // What a slip has bent loose is no gap, but there is no figure for it either.
  parts->complete = nothing_blocks(parts->report) && parts->solution.converged &&
                    loose_marks(parts->model, parts->solution).empty();
  return Adjustment(std::move(parts));
}

}  // namespace nook
