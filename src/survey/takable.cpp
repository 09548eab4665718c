// Candidates with their noise and the time that they take.
#include "survey/takable.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/notation.h"
#include "survey/corner_frame.h"
#include "survey/first_values.h"
#include "survey/observations.h"
#include "survey/span_places.h"

namespace nook {
namespace {

// Minutes that a reading takes with its marks. Chosen.
constexpr double kDiagonal = 2, kAgain = 1, kLevel = 1, kStraightedge = 1.5, kLength = 1,
                 kDrop = 0.5, kSpan = 1.5;
constexpr double kEnd = 50;     // mm that a mark stays off a wall's end. Chosen
constexpr int kMostMarks = 20;  // between which new tapes are thought of. Chosen

class Finder {
 public:
  explicit Finder(View& view)
      : view_(view), survey_(*view.model().survey), inch_(survey_.units == Unit::inch) {}

  std::vector<Takable> all(const std::vector<WallSpot>& spots) {
    for (int k = 0; k < view_.model().corners(); ++k) diagonals(k);
    for (int wall = 0; wall < view_.model().walls(); ++wall) {
      levels(wall);
      straightedges(wall);
      length(wall);
      if (uses_level_line(survey_)) drops(wall);
    }
    for (const WallSpot& spot : spots) level(spot.wall, std::round(spot.along / easy()) * easy());
    again();
    spans();
    return std::move(out_);
  }

 private:
  // A number of steps that are easy on the tape: 12 in or 300 mm, 4 in or 100 mm.
  double feet(double count) const { return count * (inch_ ? 304.8 : 300); }
  double easy() const { return inch_ ? 25.4 : 10; }
  double thirds(double count) const { return count * (inch_ ? 101.6 : 100); }
  std::string said(double mm) const {
    return with_unit(millimetres(mm), usual_rounding(survey_.units));
  }
  const std::string& name(int wall) const { return survey_.walls[wall].name; }
  double room_on(int wall) const { return view_.model().assumed_length[wall] - kEnd; }
  double board_top(int wall) const {
    const auto& board = survey_.walls[wall].baseboard;
    return board ? board->height.mm : 0;
  }
  Worth tape(double length, Ends ends) const {
    Reading reading;
    reading.value = millimetres(length);
    reading.smallest_mark = survey_.tape.read_to;
    return worth(survey_, reading, ends);
  }

  void add(NextReading reading, const Varied& of, double noise, double minutes) {
    out_.push_back({std::move(reading), functional(view_, of), noise, minutes});
  }

  void diagonals(int k) {
    constexpr double kPairs[][2] = {{3, 4}, {4, 3}, {5, 5}, {6, 4}, {4, 6}, {2, 2}};
    for (const double up : {thirds(3), thirds(10), thirds(17)}) {
      if (up <= std::max(board_top(k), board_top(k + 1))) continue;
      for (const auto& pair : kPairs)
        if (feet(pair[0]) < room_on(k) && feet(pair[1]) < room_on(k + 1))
          diagonal(k, feet(pair[0]), feet(pair[1]), up);
    }
  }

  // Both marks are laid off anew: their errors come on top, and the tape's in all three.
  void diagonal(int k, double first, double second, double up) {
    const Varied straight =
        straight_between(view_, {k, {millimetres(up), false, {}}, 0, 0}, first, second);
    const double d = straight.value,
                 c = (first * first + second * second - d * d) / (2 * first * second);
    const double pull[2] = {(first - second * c) / d, (second - first * c) / d};
    const Worth taped = tape(d, Ends::marks),
                marks[2] = {tape(first, Ends::inside_corner), tape(second, Ends::inside_corner)};
    double noise = taped.sd * taped.sd, scale = taped.tape;
    for (const int side : {0, 1}) {
      noise += std::pow(pull[side] * marks[side].sd, 2);
      scale -= pull[side] * marks[side].tape;
    }
    NextReading reading{
        fmt::format("take a diagonal: {} on the {} wall to {} on the {} wall, {} up", said(first),
                    name(k), said(second), name(k + 1), said(up)),
        0,
        NextReading::Kind::diagonal,
        k,
        first,
        second,
        up};
    add(std::move(reading), straight + view_.unknown(view_.model().tape) * scale, noise, kDiagonal);
  }

  void levels(int wall) {
    for (int i = 1; i <= 7 && feet(i) < room_on(wall); ++i) level(wall, feet(i));
  }

  void level(int wall, double at) {
    const double low = thirds(std::ceil((board_top(wall) + kEnd) / thirds(1)));
    const double high = low + survey_.level.length.mm;
    const double gap = tape(10, Ends::marks).sd;
    const double bubble = survey_.level.slope_error * survey_.level.length.mm;
    const double a = view_.base_along(wall, at, low, false);
    add({fmt::format("hold the level plumb on the {} wall, {} from the corner, from {} up to {}",
                     name(wall), said(at), said(low), said(high)),
         0, NextReading::Kind::level, wall, at, high, low},
        view_.out(wall, a, low) - view_.out(wall, a, high), gap * gap + bubble * bubble, kLevel);
  }

  // Gaps at both ends and in the middle: what a free line leaves of three.
  void straightedges(int wall) {
    const double noise = 1.5 * std::pow(tape(10, Ends::marks).sd, 2);
    for (const double up : {thirds(3), thirds(10), thirds(17)}) {
      if (up <= board_top(wall)) continue;
      for (double from = thirds(1); from + feet(4) < room_on(wall); from += feet(2)) {
        const auto out = [&](double at) {
          return view_.out(wall, view_.base_along(wall, at, up, false), up);
        };
        const double to = from + feet(4);
        add({fmt::format(
                 "lay a straightedge on the {} wall from {} to {}, {} up: gaps at both ends "
                 "and in the middle",
                 name(wall), said(from), said(to), said(up)),
             0, NextReading::Kind::straightedge, wall, from, to, up},
            out((from + to) / 2) - (out(from) + out(to)) * 0.5, noise, kStraightedge);
      }
    }
  }

  void length(int wall) {
    const RoomModel& model = view_.model();
    if (model.length[wall] < 0) return;
    const double up = thirds(10);
    const Worth taped = tape(model.assumed_length[wall], Ends::inside_corner);
    add({fmt::format("measure the {} wall from corner to corner, {} up", name(wall), said(up)), 0,
         NextReading::Kind::length, wall, 0, 0, up},
        view_.unknown(model.length[wall]) - view_.corner(wall - 1, up).right -
            view_.corner(wall, up).left + view_.unknown(model.tape) * taped.tape,
        taped.sd * taped.sd, kLength);
  }

  void drops(int wall) {
    const RoomModel& model = view_.model();
    const double out = thirds(3), noise = std::pow(tape(1000, Ends::marks).sd, 2);
    for (int i = 1; i <= 7 && feet(i) < room_on(wall); i += 2) {
      const Vec2 spot = view_.room().walls[wall].room_from_wall(feet(i), out);
      add({fmt::format(
               "measure from the level line down to the floor, {} along the {} wall, {} out",
               said(feet(i)), name(wall), said(out)),
           0, NextReading::Kind::drop, wall, feet(i), out, 0},
          view_.unknown(model.line) - view_.rise(model.floor_field(), model.floor_slope, spot),
          noise, kDrop);
    }
  }

  // Straight tapes of diagonals once more, at the same marks.
  void again() {
    for (const Corner& corner : survey_.corners)
      for (const Diagonal& diagonal : corner.diagonals) {
        if (diagonal.straight.empty()) continue;
        const auto& rows = view_.model().observations;
        const auto row = std::find_if(rows.begin(), rows.end(), [&](const Observation& o) {
          return o.id == diagonal.straight.front().id;
        });
        if (row == rows.end()) continue;
        const int k = corner.walls[0];
        const double first = diagonal.first.value.mm, second = diagonal.second.value.mm;
        add({fmt::format("take the diagonal from {} on the {} wall to {} on the {} wall again",
                         said(first), name(k), said(second), name(k + 1)),
             0, NextReading::Kind::other, k, first, second, diagonal.height.value.mm},
            row->model(view_), row->worth.sd * row->worth.sd, kAgain);
      }
  }

  void spans() {
    const auto& marks = survey_.marks;
    const std::size_t count = std::min<std::size_t>(marks.size(), kMostMarks);
    for (std::size_t i = 0; i < count; ++i)
      for (std::size_t j = i + 1; j < count; ++j) {
        SpanSpot a, b;
        a.x = view_.model().point.at(marks[i]);
        b.x = view_.model().point.at(marks[j]);
        const Varied d = distance(view_, a, b);
        const Worth taped = tape(d.value, Ends::marks);
        add({fmt::format("take a tape from '{}' to '{}'", marks[i], marks[j]), 0,
             NextReading::Kind::span, 0, 0, 0, 0},
            d + view_.unknown(view_.model().tape) * taped.tape, taped.sd * taped.sd, kSpan);
      }
  }

  View& view_;
  const Survey& survey_;
  bool inch_;
  std::vector<Takable> out_;
};

}  // namespace

std::vector<Takable> takable_readings(View& view, const std::vector<WallSpot>& spots) {
  return Finder(view).all(spots);
}

}  // namespace nook
