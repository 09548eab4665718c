// Adds a bump of one millimeter to a corner and sees how much of the misfit follows it.
#include "survey/mud.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/notation.h"
#include "survey/mark_names.h"

namespace nook {
namespace {

constexpr double kReach = 150;  // mm, 6 in: how far a corner's mud is feathered out. Chosen
constexpr double kProud = 3;    // sd of how far it stands out, mm. Chosen
constexpr double kRate = 0.02;  // of corners where nobody told of it. Chosen
constexpr double kBends = 0.5;  // sd of a reading that mud must move it to count. Chosen
constexpr double kMostOdds = 1e12;

// The readings of a room with that mud in corner k, at the same state.
std::vector<double> readings(const RoomModel& model, const Solution& solution, int k,
                             double proud) {
  auto survey = std::make_shared<Survey>(*model.survey);
  for (Corner& corner : survey->corners)
    if (corner.walls[0] == k) corner.buildup = Buildup{millimetres(proud), millimetres(kReach)};
  RoomModel muddy = model;
  muddy.survey = survey;
  View view(muddy, solution.state);
  std::vector<double> out;
  for (const int row : solution.rows) out.push_back(model.observations[row].model(view).value);
  return out;
}

double dot(const std::vector<double>& a, const std::vector<double>& b) {
  double sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

struct Bend {
  std::vector<double> shift;  // of each reading with 1 mm of mud, over its sd
  double proud = 0;           // likeliest
  double log_odds = 0;
};

Bend bend(const RoomModel& model, const Solution& solution, int k) {
  Bend out;
  const auto flat = readings(model, solution, k, 0), muddy = readings(model, solution, k, 1);
  std::vector<double> error;
  for (std::size_t i = 0; i < flat.size(); ++i) {
    const double sd = model.observations[solution.rows[i]].worth.sd;
    out.shift.push_back((muddy[i] - flat[i]) / sd);
    error.push_back(solution.linear->error()[i] / sd);
  }
  const double weight = dot(out.shift, solution.linear->unexplained(out.shift));
  const double pull = dot(out.shift, error), prior = 1 / (kProud * kProud);
  out.proud = pull / (weight + prior);
  out.log_odds = std::log(kRate) + std::log(prior / (weight + prior)) / 2 +
                 pull * pull / (2 * (weight + prior));
  return out;
}

bool told(const Survey& survey, int k) {
  return std::any_of(survey.corners.begin(), survey.corners.end(),
                     [&](const Corner& corner) { return corner.walls[0] == k && corner.buildup; });
}

Suspect suspect(const RoomModel& model, const Solution& solution, int k, const Bend& bend) {
  Suspect out;
  for (std::size_t i = 0; i < bend.shift.size(); ++i)
    if (std::abs(bend.shift[i] * bend.proud) > kBends)
      out.ids.push_back(model.observations[solution.rows[i]].id);
  const Rounding rounding = model.survey->said();
  out.reason = fmt::format(
      "these bend together near the {} corner: {} of mud built up there, not a slip; say so with "
      "buildup = {{ proud = '{}', reach = '{}' }} or take readings further out",
      corner_name(*model.survey, k), with_unit(millimetres(bend.proud), rounding),
      with_unit(millimetres(bend.proud), rounding), with_unit(millimetres(kReach), rounding));
  out.likely_mm = bend.proud;
  out.odds = std::min(kMostOdds, std::exp(std::min(bend.log_odds, 100.0)));
  return out;
}

}  // namespace

std::optional<Mud> mud_suspect(const RoomModel& model, const Solution& solution) {
  std::optional<Mud> best;
  for (int k = 0; k < model.corners(); ++k) {
    if (told(*model.survey, k)) continue;
    const Bend found = bend(model, solution, k);
    Mud here{suspect(model, solution, k, found), found.log_odds};
    const bool run = found.proud > 0 && here.suspect.ids.size() > 1;
    if (run && (!best || here.log_odds > best->log_odds)) best = std::move(here);
  }
  return best;
}

}  // namespace nook
