// Candidates with their noise and the time that they take.
#include "survey/takable.h"

#include <fmt/format.h>

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "base/notation.h"
#include "survey/corner_frame.h"
#include "survey/observations.h"
#include "survey/reading_names.h"
#include "survey/span_places.h"

namespace nook {
namespace {

// Minutes that a reading takes with its marks. Chosen.
constexpr double kDiagonal = 2, kAgain = 1, kLevel = 1, kStraightedge = 1.5, kLength = 1,
                 kDrop = 0.5, kSpan = 1.5, kLine = 1, kOnLine = 0.25;
constexpr double kEnd = 50;             // mm that a mark stays off a wall's end. Chosen
constexpr int kMostMarks = 20;          // between which new tapes are thought of. Chosen
constexpr std::size_t kMostSpans = 60;  // that are thought of once more. Chosen
constexpr double kFewOnLine = 300;      // mm: a shorter line tells no more than a level. Chosen

// What n distances to a line tell whose offset (and with two, tilt) is free: combinations with the
// error of one distance each, free of one another.
Eigen::MatrixXd told_by_line(const std::vector<double>& at, int free) {
  const int n = static_cast<int>(at.size());
  Eigen::MatrixXd line(n, free);
  for (int i = 0; i < n; ++i)
    for (int k = 0; k < free; ++k) line(i, k) = k == 0 ? 1 : at[i] - at[0];
  const Eigen::MatrixXd all = line.householderQr().householderQ() * Eigen::MatrixXd::Identity(n, n);
  return all.rightCols(n - free);
}

class Finder {
 public:
  explicit Finder(View& view)
      : view_(view),
        survey_(*view.model().survey),
        inch_(survey_.units == Unit::inch),
        names_(reading_names(survey_)) {
    const auto& rows = view.model().observations;
    for (int i = 0; i < static_cast<int>(rows.size()); ++i) rows_.emplace(rows[i].id, i);
  }

  std::vector<Takable> all(const TakingSpots& spots) {
    for (int k = 0; k < view_.model().corners(); ++k) diagonals(k);
    for (int wall = 0; wall < view_.model().walls(); ++wall) {
      levels(wall);
      straightedges(wall);
      length(wall);
      drops(wall);
    }
    for (const UprightSpot& spot : spots.uprights) upright(spot);
    for (const LevelRun& run : spots.runs) string(run);
    for (const FloorPlace& place : spots.floor)
      drop(near(place.wall, place.along), std::max(easy(), eased(place.out)));
    again();
    spans();
    return std::move(out_);
  }

 private:
  // A number of steps that are easy on the tape: 12 in or 300 mm, 4 in or 100 mm.
  double feet(double count) const { return count * (inch_ ? 304.8 : 300); }
  double easy() const { return inch_ ? 25.4 : 10; }
  double thirds(double count) const { return count * (inch_ ? 101.6 : 100); }
  double eased(double mm) const { return std::round(mm / easy()) * easy(); }

  // A place along a wall, counted from one of its corners.
  struct Spot {
    int wall;
    double at;
    bool from_right;
  };
  bool between(int wall) const { return view_.model().length[wall] >= 0; }
  // From the nearer corner, at an easy number.
  Spot near(int wall, double along) const {
    const double length = view_.model().assumed_length[wall];
    const bool from_right = between(wall) && along > length / 2;
    return {wall, eased(from_right ? length - along : along), from_right};
  }
  double base(const Spot& spot, double z) {
    return view_.base_along(spot.wall, spot.at, z, spot.from_right);
  }
  std::string said(const Spot& spot) const {
    return said(spot.at) + " from " + (between(spot.wall) ? "its " : "the ") +
           (!between(spot.wall) ? ""
            : spot.from_right   ? "right "
                                : "left ") +
           "corner";
  }
  // Every `step` feet from each corner of a wall, to its middle or to its end.
  std::vector<Spot> all_along(int wall, int step) const {
    std::vector<Spot> out;
    const double half = view_.model().assumed_length[wall] / 2;
    for (int i = 1; i <= 7; i += step) {
      if (feet(i) >= (between(wall) ? half + 1 : room_on(wall))) break;
      out.push_back({wall, feet(i), false});
      if (between(wall)) out.push_back({wall, feet(i), true});
    }
    return out;
  }
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
    const int numbers = reading.kind == NextReading::Kind::straightedge ? 3 : 1;
    const auto same = [&](const Takable& t) { return t.reading.reading == reading.reading; };
    if (std::any_of(out_.begin(), out_.end(), same)) return;
    out_.push_back({std::move(reading), {functional(view_, of)}, noise, minutes, numbers});
  }

  void diagonals(int k) {
    // Feet; the smaller ones are for the shallow side walls of an alcove.
    constexpr double kPairs[][2] = {{3, 4}, {4, 3},   {5, 5},   {6, 4},   {4, 6},   {2, 2}, {2, 4},
                                    {4, 2}, {1.5, 2}, {2, 1.5}, {1.5, 3}, {3, 1.5}, {1, 1}};
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
    for (const Spot& spot : all_along(wall, 1)) level(spot);
  }

  double clear_of_board(int wall) const {
    return thirds(std::ceil((board_top(wall) + kEnd) / thirds(1)));
  }

  void level(const Spot& spot) {
    const double low = clear_of_board(spot.wall), high = low + survey_.level.length.mm;
    const double gap = tape(10, Ends::marks).sd;
    const double bubble = survey_.level.slope_error * survey_.level.length.mm;
    const double a = base(spot, low);
    add({fmt::format("hold the level plumb on the {} wall, {}, from {} up to {}", name(spot.wall),
                     said(spot), said(low), said(high)),
         0, NextReading::Kind::level, spot.wall, spot.at, high, low, spot.from_right},
        view_.out(spot.wall, a, low) - view_.out(spot.wall, a, high), gap * gap + bubble * bubble,
        kLevel);
  }

  void upright(const UprightSpot& edge) {
    const Spot spot = near(edge.wall, edge.along);
    if (spot.at < easy()) return;
    level(spot);
    const double low = std::max(eased(edge.low), clear_of_board(edge.wall));
    if (edge.high - low < kFewOnLine) return;
    const std::vector<double> heights = apart(low, eased(edge.high));
    std::vector<Varied> out;
    const double a = base(spot, low);
    for (const double z : heights) out.push_back(view_.out(spot.wall, a, z));
    line({fmt::format("plumb line at the {} wall, {}: line to wall every {}, from {} up to {}",
                      name(spot.wall), said(spot), said(inch_ ? 406.4 : 400), said(low),
                      said(heights.back())),
          0, NextReading::Kind::plumb, spot.wall, spot.at, heights.back(), low, spot.from_right},
         heights, out);
  }

  void string(const LevelRun& run) {
    const double up = std::max(eased(run.up), clear_of_board(run.wall));
    const Spot from = near(run.wall, std::max(run.from, easy())), to = near(run.wall, run.to);
    const double start = base(from, up), end = base(to, up);
    if (end - start < kFewOnLine) return;
    const std::vector<double> places = apart(start, end);
    std::vector<Varied> out;
    for (const double a : places) out.push_back(view_.out(run.wall, a, up));
    line({fmt::format("string or level laser along the {} wall, {} up, from {} to {}: line to wall "
                      "every {}",
                      name(run.wall), said(up), said(from), said(to), said(inch_ ? 406.4 : 400)),
          0, NextReading::Kind::string, run.wall, from.at, to.at, up, from.from_right},
         places, out);
  }

  // Readings every 16 in (400 mm) at most: usual (common practice, no source).
  std::vector<double> apart(double from, double to) const {
    const int steps =
        std::max(2, static_cast<int>(std::ceil((to - from) / (inch_ ? 406.4 : 400) - 0.01)));
    std::vector<double> out;
    for (int i = 0; i <= steps; ++i) out.push_back(from + (to - from) * i / steps);
    return out;
  }

  // A plumb line leaves its offset free, a string its tilt too.
  void line(NextReading reading, const std::vector<double>& at, const std::vector<Varied>& out) {
    const int free = reading.kind == NextReading::Kind::plumb ? 1 : 2;
    const Eigen::MatrixXd told = told_by_line(at, free);
    const double sd = tape(25, Ends::marks).sd;
    Takable run{std::move(reading),
                {},
                sd * sd,
                kLine + kOnLine * static_cast<double>(at.size()),
                static_cast<int>(at.size())};
    for (int k = 0; k < told.cols(); ++k) {
      Varied sum;
      for (std::size_t i = 0; i < out.size(); ++i)
        sum = sum + out[i] * told(static_cast<int>(i), k);
      run.of.push_back(functional(view_, sum));
    }
    out_.push_back(std::move(run));
  }

  void straightedges(int wall) {
    for (const double up : {thirds(3), thirds(10), thirds(17)}) {
      if (up <= board_top(wall)) continue;
      for (double from = thirds(1); from + feet(4) < room_on(wall); from += feet(2)) {
        straightedge({wall, from, false}, up);
        if (between(wall)) straightedge({wall, from, true}, up);
      }
    }
  }

  // Gaps at both ends and in the middle: what a free line leaves of three.
  void straightedge(const Spot& from, double up) {
    const double noise = 1.5 * std::pow(tape(10, Ends::marks).sd, 2);
    const int wall = from.wall;
    const Spot to{wall, from.at + feet(4), from.from_right},
        middle{wall, from.at + feet(2), from.from_right};
    const auto out = [&](const Spot& at) { return view_.out(wall, base(at, up), up); };
    add({fmt::format("lay a straightedge on the {} wall from {} to {}{}, {} up: gaps at both ends "
                     "and in the middle",
                     name(wall), said(from.at), said(to.at),
                     from.from_right ? " from its right corner" : "", said(up)),
         0, NextReading::Kind::straightedge, wall, from.at, to.at, up, from.from_right},
        out(middle) - (out(from) + out(to)) * 0.5, noise, kStraightedge);
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
    for (const Spot& spot : all_along(wall, 2)) drop(spot, thirds(3));
  }

  void drop(const Spot& spot, double out) {
    const RoomModel& model = view_.model();
    if (model.line < 0) return;
    const double noise = std::pow(tape(1000, Ends::marks).sd, 2);
    const Vec2 at = view_.room().walls[spot.wall].room_from_wall(base(spot, 0), out);
    const Worth taped = tape(1000, Ends::marks);
    add({fmt::format("measure from the level line down to the floor at the {} wall, {}, {} out",
                     name(spot.wall), said(spot), said(out)),
         0, NextReading::Kind::drop, spot.wall, spot.at, out, 0, spot.from_right},
        view_.unknown(model.line) - view_.rise(model.floor_field(), model.floor_slope, at) +
            view_.unknown(model.tape) * taped.tape,
        noise, kDrop);
  }

  // Readings at places of their own once more: tapes at the same marks, levels at the same spot.
  void again() {
    for (const Corner& corner : survey_.corners) {
      const int k = corner.walls[0];
      for (const Diagonal& d : corner.diagonals)
        once_more(d.straight, {"", 0, NextReading::Kind::other, k, d.first.value.mm,
                               d.second.value.mm, d.height.value.mm, false});
      for (const SquareReading& square : corner.squares)
        once_more(square.gap, {"", 0, NextReading::Kind::other, k, 0, 0, 0, false});
    }
    for (int wall = 0; wall < static_cast<int>(survey_.walls.size()); ++wall)
      for (const LevelReading& r : survey_.walls[wall].levels)
        once_more(r.gap, {"", 0, NextReading::Kind::level, wall, r.at.mm, r.to.value.mm,
                          r.from.value.mm, r.from_right});
    for (const Across& across : survey_.across)
      once_more(across.is, {"", 0, NextReading::Kind::length, across.walls[0] + 1, 0, 0, 0, false});
    for (const DropReading& d : survey_.floor.down)
      once_more(d.drop,
                {"", 0, NextReading::Kind::drop, d.wall, d.along.mm, d.out.mm, 0, d.from_right});
    if (survey_.spans.size() > kMostSpans) return;
    for (const Span& span : survey_.spans)
      once_more(span.is, {"", 0, NextReading::Kind::span, 0, 0, 0, 0, false});
  }

  void once_more(const Readings& readings, NextReading next) {
    if (readings.empty()) return;
    const auto row = rows_.find(readings.front().id);
    if (row == rows_.end()) return;
    next.reading = "take this again: " + names_.at(row->first);
    const Observation& o = view_.model().observations[row->second];
    add(std::move(next), o.model(view_), o.worth.sd * o.worth.sd, kAgain);
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
  std::map<std::string, std::string> names_;  // of readings by id
  std::map<std::string, int> rows_;           // observations by id
  std::vector<Takable> out_;
};

}  // namespace

std::vector<Takable> takable_readings(View& view, const TakingSpots& spots) {
  return Finder(view).all(spots);
}

}  // namespace nook
