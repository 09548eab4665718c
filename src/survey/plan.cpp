// Greedy design of a survey.
#include "survey/plan.h"

#include <algorithm>
#include <tuple>

#include "survey/measure_next.h"
#include "survey/room_report.h"
#include "survey/takable.h"

namespace nook {
namespace {

constexpr int kMostReadings = 15;
constexpr double kMostMinutes = 20;
constexpr double kFlatness = 2;  // mm, of walls nobody has looked at. Chosen

int station(const NextReading& reading) {
  switch (reading.kind) {
    case NextReading::Kind::drop:
      return 0;
    case NextReading::Kind::diagonal:
    case NextReading::Kind::length:
    case NextReading::Kind::other:
      return 1;
    default:
      return 2;
  }
}

bool before(const PlannedReading& a, const PlannedReading& b) {
  const auto key = [](const NextReading& r) {
    return std::make_tuple(station(r), r.of, r.at_mm, r.up_mm, r.to_mm);
  };
  return key(a.reading) < key(b.reading);
}

std::vector<Functional> wants(View& view, const std::vector<Undecided>& wanted) {
  std::vector<Functional> out;
  for (const Undecided& u : wanted) out.push_back(functional(view, u));
  return out.empty() ? usual_wants(view) : out;
}

std::vector<WallSpot> spots(const std::vector<Undecided>& wanted) {
  std::vector<WallSpot> out;
  for (const Undecided& u : wanted)
    for (const Undecided::Term& term : u.terms)
      if (term.spot.on == SurfaceSpot::On::wall) out.push_back({term.spot.wall, term.spot.along});
  return out;
}

// A reading taken only once that nothing else checks is taken twice.
MeasuringPlan finished(const Outlook& outlook, const std::vector<int>& taken, double open,
                       const std::vector<double>& drops) {
  MeasuringPlan plan;
  for (std::size_t i = 0; i < taken.size(); ++i) {
    const Takable& takable = outlook.takable()[taken[i]];
    PlannedReading planned{takable.reading, takable.minutes,
                           outlook.redundancy(taken[i]) < kUncheckable};
    planned.reading.gain = drops[i] / open;
    plan.minutes += planned.minutes * (planned.twice ? 1.5 : 1);  // marks are laid off already
    plan.readings.push_back(std::move(planned));
  }
  plan.enough = outlook.worst() <= 1;
  std::stable_sort(plan.readings.begin(), plan.readings.end(), before);
  return plan;
}

}  // namespace

MeasuringPlan measuring_plan(const Survey& survey, int origin_corner,
                             const std::vector<Undecided>& wanted) {
  const double flatness = survey.flatness.sd ? survey.flatness.sd->mm : kFlatness;
  const RoomModel model = room_model(std::make_shared<Survey>(survey), origin_corner, flatness);
  const Solution solution = solve(model, rows_in_use(model), first_state(model));
  View view(model, solution.state);
  Outlook outlook(model, solution, wants(view, wanted), takable_readings(view, spots(wanted)));
  const double open = outlook.open();
  std::vector<int> taken;
  std::vector<double> drops;
  double minutes = 0;
  while (outlook.worst() > 1 && static_cast<int>(taken.size()) < kMostReadings) {
    const int best = outlook.best();
    if (best < 0 || minutes + outlook.takable()[best].minutes > kMostMinutes) break;
    minutes += outlook.takable()[best].minutes;
    drops.push_back(outlook.drop(best));
    outlook.take(best);
    taken.push_back(best);
  }
  return finished(outlook, taken, open, drops);
}

}  // namespace nook
