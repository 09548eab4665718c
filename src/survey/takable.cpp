// Candidates with their noise and the time that they take.
#include "survey/takable.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "survey/corner_frame.h"
#include "survey/observations.h"
#include "survey/span_places.h"
#include "survey/taking.h"

namespace nook {
namespace {

// Minutes that a reading takes with its marks. Chosen.
constexpr double kDiagonal = 2, kLength = 1, kDrop = 0.5, kSpan = 1.5;
constexpr int kMostMarks = 20;  // between which new tapes are thought of. Chosen

// From a corner along its first wall and along its second, and how far up.
struct TapeAt {
  double first, second, up;
};

// Both marks are laid off anew: their errors come on top, and the tape's in all three.
void add_diagonal(Taking& on, int k, const TapeAt& at) {
  const auto [first, second, up] = at;
  const Varied straight =
      straight_between(on.view(), {k, {millimetres(up), false, {}}, 0, 0}, first, second);
  const double d = straight.value,
               c = (first * first + second * second - d * d) / (2 * first * second);
  const double pull[2] = {(first - second * c) / d, (second - first * c) / d};
  const Worth taped = on.tape(d, Ends::marks), marks[2] = {on.tape(first, Ends::inside_corner),
                                                           on.tape(second, Ends::inside_corner)};
  double noise = taped.sd * taped.sd, scale = taped.tape;
  for (const int side : {0, 1}) {
    noise += std::pow(pull[side] * marks[side].sd, 2);
    scale -= pull[side] * marks[side].tape;
  }
  NextReading reading{
      fmt::format("take a diagonal: {} on the {} wall to {} on the {} wall, {} up", on.said(first),
                  on.name(k), on.said(second), on.name(k + 1), on.said(up)),
      0,
      NextReading::Kind::diagonal,
      k,
      first,
      second,
      up};
  on.add(std::move(reading), straight + on.view().unknown(on.model().tape) * scale, noise,
         kDiagonal);
}

void add_diagonals(Taking& on, int k) {
  // Feet; the smaller ones are for the shallow side walls of an alcove.
  constexpr double kPairs[][2] = {{3, 4}, {4, 3},   {5, 5},   {6, 4},   {4, 6},   {2, 2}, {2, 4},
                                  {4, 2}, {1.5, 2}, {2, 1.5}, {1.5, 3}, {3, 1.5}, {1, 1}};
  for (const double up : {on.thirds(3), on.thirds(10), on.thirds(17)}) {
    if (up <= std::max(on.board_top(k), on.board_top(k + 1))) continue;
    for (const auto& pair : kPairs)
      if (on.feet(pair[0]) < on.room_on(k) && on.feet(pair[1]) < on.room_on(k + 1))
        add_diagonal(on, k, {on.feet(pair[0]), on.feet(pair[1]), up});
  }
}

void add_length(Taking& on, int wall) {
  const RoomModel& model = on.model();
  if (model.length[wall] < 0) return;
  const double up = on.thirds(10);
  const Worth taped = on.tape(model.assumed_length[wall], Ends::inside_corner);
  on.add(
      {fmt::format("measure the {} wall from corner to corner, {} up", on.name(wall), on.said(up)),
       0, NextReading::Kind::length, wall, 0, 0, up},
      on.view().unknown(model.length[wall]) - on.view().corner(wall - 1, up).right -
          on.view().corner(wall, up).left + on.view().unknown(model.tape) * taped.tape,
      taped.sd * taped.sd, kLength);
}

void add_drop(Taking& on, const TakingPlace& spot, double out) {
  const RoomModel& model = on.model();
  if (model.line < 0) return;
  const double noise = std::pow(on.tape(1000, Ends::marks).sd, 2);
  const Vec2 at = on.view().room().walls[spot.wall].room_from_wall(on.base(spot, 0), out);
  const Worth taped = on.tape(1000, Ends::marks);
  on.add({fmt::format("measure from the level line down to the floor at the {} wall, {}, {} out",
                      on.name(spot.wall), on.said(spot), on.said(out)),
          0, NextReading::Kind::drop, spot.wall, spot.at, out, 0, spot.from_right},
         on.view().unknown(model.line) -
             on.view().rise(model.floor_field(), model.floor_slope, at) +
             on.view().unknown(model.tape) * taped.tape,
         noise, kDrop);
}

void add_drops(Taking& on, int wall) {
  for (const TakingPlace& spot : on.all_along(wall, 2)) add_drop(on, spot, on.thirds(3));
}

void add_spans(Taking& on) {
  const auto& marks = on.survey().marks;
  const std::size_t count = std::min<std::size_t>(marks.size(), kMostMarks);
  for (std::size_t i = 0; i < count; ++i)
    for (std::size_t j = i + 1; j < count; ++j) {
      SpanSpot a, b;
      a.x = on.model().point.at(marks[i]);
      b.x = on.model().point.at(marks[j]);
      const Varied d = distance(on.view(), a, b);
      const Worth taped = on.tape(d.value, Ends::marks);
      on.add({fmt::format("take a tape from '{}' to '{}'", marks[i], marks[j]), 0,
              NextReading::Kind::span, 0, 0, 0, 0},
             d + on.view().unknown(on.model().tape) * taped.tape, taped.sd * taped.sd, kSpan);
    }
}

}  // namespace

std::vector<Takable> takable_readings(View& view, const TakingSpots& spots) {
  Taking on(view);
  for (int k = 0; k < on.model().corners(); ++k) add_diagonals(on, k);
  for (int wall = 0; wall < on.model().walls(); ++wall) {
    add_levels(on, wall);
    add_straightedges(on, wall);
    add_length(on, wall);
    add_drops(on, wall);
  }
  for (const UprightSpot& spot : spots.uprights) add_upright(on, spot);
  for (const LevelRun& run : spots.runs) add_string(on, run);
  for (const FloorPlace& place : spots.floor) {
    TakingPlace spot = on.near(place.wall, place.along);
    spot.at = std::max(on.thirds(1), spot.at);  // no tape hangs in the corner itself
    add_drop(on, spot, std::max(on.easy(), on.eased(place.out)));
  }
  add_again(on);
  add_spans(on);
  return std::move(on).found();
}

}  // namespace nook
