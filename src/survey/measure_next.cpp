// Greedy choice of readings.
#include "survey/measure_next.h"

#include <algorithm>
#include <cmath>

#include "survey/first_values.h"
#include "survey/span_places.h"
#include "survey/takable.h"

namespace nook {
namespace {

constexpr double kLeastGain = 0.01;  // of what is open; less is not worth a walk. Chosen
constexpr double kEdge = 0.3;        // weight of a spot that a level is thought of at. Chosen

Varied moved(View& view, const SurfaceSpot& spot) {
  const RoomModel& model = view.model();
  if (spot.on == SurfaceSpot::On::wall) {
    // Along its own direction out of the wall; a shift along the wall is no move of the surface.
    const Vec2 out = view.room().walls[spot.wall].out;
    const VariedPoint p = view.point(spot.wall, spot.along, spot.z);
    return p.x * out.x + p.y * out.y;
  }
  if (spot.on == SurfaceSpot::On::floor)
    return view.rise(model.floor_field(), model.floor_slope, spot.plan);
  if (model.ceiling < 0) return {};
  return view.unknown(model.ceiling) +
         view.rise(model.ceiling_field(), model.ceiling_slope, spot.plan);
}

// A level is also held where the pieces' edges are.
TakingSpots edges_of(const std::vector<Undecided>& undecided) {
  TakingSpots spots;
  for (const Undecided& u : undecided)
    for (const Undecided::Term& term : u.terms)
      if (term.spot.on == SurfaceSpot::On::wall && std::abs(term.weight) > kEdge)
        spots.uprights.push_back({term.spot.wall, term.spot.along, 0, 0});
  return spots;
}

// How a wall stands at a spot, seen from its neighbor at corner k.
Varied against(View& view, int k, int wall, double along, double z) {
  const double a = view.from_corner(k, wall, along).value;
  return view.out(wall, a, z) - view.unknown(view.model().angle[k]) * along;
}

void add_corner(View& view, int k, std::vector<Functional>& out) {
  for (const int wall : {k, k + 1})
    for (const double along : {300.0, 900.0, 1500.0})
      for (const double z : {300.0, 1000.0, 1800.0})
        if (along < view.model().assumed_length[wall])
          out.push_back(functional(view, against(view, k, wall, along, z)));
}

void add_length(View& view, int wall, std::vector<Functional>& out) {
  constexpr double kZ = 1000;  // mm
  const int length = view.model().length[wall];
  if (length < 0) return;
  out.push_back(functional(
      view, view.unknown(length) - view.corner(wall - 1, kZ).right - view.corner(wall, kZ).left));
}

void add_floor(View& view, std::vector<Functional>& out) {
  const RoomModel& model = view.model();
  for (int wall = 0; wall < model.walls(); ++wall)
    for (const double along :
         {300.0, model.length[wall] >= 0 ? model.assumed_length[wall] - 300 : 1500.0}) {
      const Vec2 spot = view.room().walls[wall].room_from_wall(along, 300);
      out.push_back(functional(view, view.unknown(model.line) -
                                         view.rise(model.floor_field(), model.floor_slope, spot)));
    }
}

void add_marks(View& view, std::vector<Functional>& out) {
  const auto& points = view.model().point;
  for (auto a = points.begin(); a != points.end(); ++a)
    for (auto b = std::next(a); b != points.end(); ++b) {
      SpanSpot p, q;
      p.x = a->second;
      q.x = b->second;
      out.push_back(functional(view, distance(view, p, q)));
    }
}

}  // namespace

Functional functional(View& view, const Undecided& undecided) {
  Varied sum;
  for (const Undecided::Term& term : undecided.terms)
    sum = sum + moved(view, term.spot) * (term.weight / undecided.tolerance);
  return functional(view, sum);
}

std::vector<Functional> usual_wants(View& view) {
  std::vector<Functional> out;
  const RoomModel& model = view.model();
  for (int k = 0; k < model.corners(); ++k) add_corner(view, k, out);
  for (int wall = 0; wall < model.walls(); ++wall) add_length(view, wall, out);
  if (model.corners() == 0)
    for (int wall = 0; wall < model.walls(); ++wall)
      for (const double along : {300.0, 900.0, 1500.0})
        out.push_back(functional(view, view.out(wall, along, 1800) - view.out(wall, along, 300)));
  if (model.line >= 0) add_floor(view, out);
  add_marks(view, out);
  return out;
}

std::vector<NextReading> measure_next(const RoomModel& model, const Solution& solution,
                                      const std::vector<Undecided>& undecided, int count) {
  View view(model, solution.state);
  std::vector<Functional> wants;
  for (const Undecided& u : undecided) wants.push_back(functional(view, u));
  if (wants.empty()) wants = usual_wants(view);
  Outlook outlook(model, solution, std::move(wants), takable_readings(view, edges_of(undecided)));
  const double open = outlook.open();
  std::vector<NextReading> out;
  while (static_cast<int>(out.size()) < count) {
    const int best = outlook.best();
    if (best < 0 || outlook.drop(best) < kLeastGain * open) break;
    NextReading next = outlook.takable()[best].reading;
    next.gain = outlook.drop(best) / open;
    outlook.take(best);
    out.push_back(std::move(next));
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const NextReading& a, const NextReading& b) { return a.gain > b.gain; });
  return out;
}

}  // namespace nook
