// Greedy design of a survey, pruned.
#include "survey/plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "survey/measure_next.h"
#include "survey/room_report.h"
#include "survey/takable.h"
#include "survey/taking.h"

namespace nook {
namespace {

constexpr int kMostReadings = 15;    // that one takes in one go. Chosen
constexpr double kMostMinutes = 20;  // likewise. Chosen
constexpr double kFlatness = 2;      // mm, of walls nobody has looked at. Chosen
constexpr double kSamePlace = 25;    // mm: spots that one stick covers. Chosen
constexpr double kPlane = 400;       // mm between heights that are to make a plane. Chosen
constexpr double kRise = 0.5;        // minutes of a reading up to the ceiling. Chosen
constexpr double kTwice = 1.5;       // times the minutes: marks are laid off already. Chosen

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
    return std::make_tuple(station(r), r.of, r.from_right, r.at_mm, r.up_mm, r.to_mm);
  };
  return key(a.reading) < key(b.reading);
}

Functional below_line(View& view, const FloorWanted& at) {
  const RoomModel& model = view.model();
  const Vec2 spot = view.room().walls[at.wall].room_from_wall(at.along, at.out);
  const Varied drop =
      view.unknown(model.line) - view.rise(model.floor_field(), model.floor_slope, spot);
  return functional(view, drop * (1 / at.tolerance));
}

std::vector<Functional> wants(View& view, const PlanWanted& wanted) {
  std::vector<Functional> out;
  for (const Undecided& u : wanted.surfaces) out.push_back(functional(view, u));
  if (out.empty() && wanted.floor.empty()) return usual_wants(view);
  for (const FloorWanted& at : wanted.floor) out.push_back(below_line(view, at));
  if (!wanted.whole) return out;
  for (Functional& f : never_missed(view.model())) out.push_back(std::move(f));
  return out;
}

struct Range {
  double low = 1e300, high = -1e300;

  void take_in(double x) { low = std::min(low, x), high = std::max(high, x); }
};

// Spots above one another are an upright edge, spots at one height a level one.
TakingSpots spots(const PlanWanted& wanted) {
  std::map<std::pair<int, double>, Range> uprights, runs;
  for (const Undecided& u : wanted.surfaces)
    for (const Undecided::Term& term : u.terms) {
      if (term.spot.on != SurfaceSpot::On::wall) continue;
      const auto place = [](double mm) { return std::round(mm / kSamePlace) * kSamePlace; };
      const SurfaceSpot& at = term.spot;
      uprights[{at.wall, place(at.along)}].take_in(at.z);
      runs[{at.wall, place(at.z)}].take_in(at.along);
    }
  TakingSpots out;
  for (const auto& [at, heights] : uprights)
    out.uprights.push_back({at.first, at.second, heights.low, heights.high});
  for (const auto& [at, along] : runs)
    out.runs.push_back({at.first, along.low, along.high, at.second});
  for (const FloorWanted& at : wanted.floor) out.floor.push_back({at.wall, at.along, at.out});
  return out;
}

double minutes_of(const Outlook& outlook, const std::vector<int>& taken) {
  double minutes = 0;
  for (const int reading : taken) minutes += outlook.takable()[reading].minutes;
  return minutes;
}

// Of heights of the floor at one wall: within so much of each other.
bool near(const NextReading& a, const NextReading& b, double mm) {
  return a.of == b.of && a.from_right == b.from_right &&
         std::hypot(a.at_mm - b.at_mm, a.to_mm - b.to_mm) < mm;
}

std::vector<NextReading> taken_at(const std::vector<DropReading>& drops) {
  std::vector<NextReading> out;
  for (const DropReading& d : drops)
    out.push_back({"", 0, NextReading::Kind::drop, d.wall, d.along.mm, d.out.mm, 0, d.from_right});
  return out;
}

// With heights of the floor in so many new places at least.
std::vector<int> with_drops(Outlook outlook, const Survey& survey, std::vector<int> taken,
                            int places) {
  std::vector<NextReading> known = taken_at(survey.floor.down);
  const auto apart_by = [&](double mm, const NextReading& r) {
    return r.kind == NextReading::Kind::drop &&
           std::none_of(known.begin(), known.end(),
                        [&](const NextReading& k) { return near(k, r, mm); });
  };
  const auto enter = [&](int reading) {
    const NextReading& r = outlook.takable()[reading].reading;
    if (apart_by(kSamePlace, r)) known.push_back(r), --places;
    outlook.take(reading);
  };
  for (const int reading : taken) enter(reading);
  while (places > 0) {
    int best = -1;
    for (int r = 0; r < static_cast<int>(outlook.takable().size()); ++r)
      if (apart_by(kPlane, outlook.takable()[r].reading) &&
          (best < 0 || outlook.drop(r) > outlook.drop(best)))
        best = r;
    if (best < 0) break;
    taken.push_back(best);
    enter(best);
  }
  return taken;
}

std::vector<int> chosen(Outlook outlook) {
  std::vector<int> taken;
  while (outlook.worst() > 1 && static_cast<int>(taken.size()) < kMostReadings) {
    const int best = outlook.most_relief();
    if (best < 0) break;
    taken.push_back(best);
    if (minutes_of(outlook, taken) > kMostMinutes) {
      taken.pop_back();
      break;
    }
    outlook.take(best);
  }
  return taken;
}

double worst_after(Outlook outlook, const std::vector<int>& taken) {
  for (const int reading : taken) outlook.take(reading);
  return outlook.worst();
}

// Without those that later ones made needless, first taken first.
std::vector<int> fewest(const Outlook& outlook, std::vector<int> taken) {
  if (worst_after(outlook, taken) > 1) return taken;
  for (std::size_t i = 0; i < taken.size();) {
    std::vector<int> fewer = taken;
    fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
    if (worst_after(outlook, fewer) <= 1)
      taken = std::move(fewer);
    else
      ++i;
  }
  return taken;
}

// A reading taken only once that nothing else checks is taken twice.
MeasuringPlan finished(Outlook outlook, const std::vector<int>& taken) {
  MeasuringPlan plan;
  const double open = outlook.open();
  std::map<int, PlannedReading> planned;
  for (const int reading : taken) {
    const double gain = open > 0 ? outlook.drop(reading) / open : 0;
    outlook.take(reading);
    const auto [at, fresh] =
        planned.try_emplace(reading, PlannedReading{outlook.takable()[reading].reading, 0, false,
                                                    outlook.takable()[reading].numbers});
    at->second.twice = !fresh;
    at->second.reading.gain += gain;
  }
  for (auto& [reading, it] : planned) {
    it.twice = it.twice || outlook.redundancy(reading) < kUncheckable;
    it.minutes = outlook.takable()[reading].minutes * (it.twice ? kTwice : 1);
    plan.minutes += it.minutes;
    plan.readings.push_back(it);
  }
  plan.enough = outlook.worst() <= 1;
  std::stable_sort(plan.readings.begin(), plan.readings.end(), before);
  return plan;
}

// Up to the ceiling, at the near ends of the walls and then at the far ones, where it was not
// measured yet.
void add_rises(View& view, int places, MeasuringPlan& plan) {
  const Taking on(view);
  const int walls = view.model().walls();
  std::vector<NextReading> known = taken_at(view.model().survey->ceiling);
  for (int i = 0; i < 2 * walls && static_cast<int>(plan.ceiling.size()) < places; ++i) {
    const int wall = i % walls;
    const double out = on.thirds(3), far = std::floor(on.room_on(wall) / on.feet(1)) * on.feet(1);
    const double along = i < walls ? std::min(on.feet(1), far) : far;
    const NextReading next{
        fmt::format("measure from the level line up to the ceiling at the {} wall, {}, {} out",
                    on.name(wall), on.said(TakingPlace{wall, along, false}), on.said(out)),
        0,
        NextReading::Kind::other,
        wall,
        along,
        out,
        0,
        false};
    if (std::any_of(known.begin(), known.end(),
                    [&](const NextReading& k) { return near(k, next, kPlane); }))
      continue;
    known.push_back(next);
    plan.ceiling.push_back({next, kRise});
    plan.minutes += kRise;
  }
}

}  // namespace

MeasuringPlan measuring_plan(const Survey& survey, int origin_corner, const PlanWanted& wanted) {
  const double flatness = survey.flatness.sd ? survey.flatness.sd->mm : kFlatness;
  const int drops = missing_drops(survey, wanted.heights);
  const RoomModel model = room_model(std::make_shared<Survey>(survey), origin_corner, flatness,
                                     {!wanted.floor.empty() || drops > 0, wanted.reach});
  const Solution solution = solve(model, rows_in_use(model), first_state(model));
  View view(model, solution.state);
  const Outlook outlook(model, solution, wants(view, wanted),
                        takable_readings(view, spots(wanted)));
  MeasuringPlan plan =
      finished(outlook, with_drops(outlook, survey, fewest(outlook, chosen(outlook)), drops));
  add_rises(view, missing_rises(survey, wanted.heights), plan);
  return plan;
}

}  // namespace nook
