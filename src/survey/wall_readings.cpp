// Lengths, levels, straightedges, plumb lines and strings as equations.
#include <algorithm>

#include "room/counted.h"
#include "survey/first_values.h"
#include "survey/observations.h"

namespace nook {
namespace {

bool between_corners(const RoomModel& model, int wall) {
  return model.length[wall] >= 0;
}

// From surface to surface of the neighbors, at one height.
Equation between(const RoomModel& model, int wall, const Height& height, Face on) {
  const double left = board_at(model, wall - 1, height, on);
  const double own = board_at(model, wall, height, on);
  const double right = board_at(model, wall + 1, height, on);
  return [=](View& view) {
    const double z = view.z_of(height, wall, view.room().walls[wall].length / 2);
    return view.unknown(view.model().length[wall]) - view.corner(wall - 1, z, left, own).right -
           view.corner(wall, z, own, right).left;
  };
}

void observe_length(RoomModel& model, int wall) {
  const Wall& entry = model.survey->walls[wall];
  if (entry.length.empty()) return;
  const Height height = entry.length_height.value_or(kUnsaidHeight);
  int extent = -1;
  if (!between_corners(model, wall))
    extent = model.add({UnknownKind::extent, wall, entry.name,
                        mean_or(entry.length, entry.length.front().value.mm), 0});
  for (const Reading& reading : entry.length) {
    Observed how{worth(*model.survey, reading, Ends::inside_corner), wall};
    if (extent < 0 && !entry.length_height && reading.on == Face::wall)
      how.board = board_thickness(model, wall - 1) + board_thickness(model, wall + 1);
    observe(model, reading, how,
            extent >= 0 ? [extent](View& view) { return view.unknown(extent); }
                        : between(model, wall, height, reading.on));
  }
}

void observe_level(RoomModel& model, int wall, const LevelReading& level) {
  const bool upward = level.from.value < level.to.value;
  const Height low = upward ? level.from : level.to, high = upward ? level.to : level.from;
  const double sign = level.gap_at_top ? 1 : -1;
  const double span = std::abs(level.to.value.mm - level.from.value.mm);
  const double bubble = model.survey->level.slope_error * span;
  for (const Reading& gap : level.gap) {
    Observed how{worth(*model.survey, gap, Ends::marks, bubble), wall};
    how.two_ended = true;
    const double low_board = board_at(model, wall, low, gap.on);
    const double high_board = board_at(model, wall, high, gap.on);
    const double at = level.at.mm;
    const bool from_right = level.from_right;
    observe(model, gap, how, [=](View& view) {
      const double z = view.z_along(low, wall, at, from_right);
      const double a = view.base_along(wall, at, z, from_right);
      return (view.out(wall, a, z) + low_board -
              view.out(wall, a, view.z_along(high, wall, at, from_right)) - high_board) *
             sign;
    });
  }
}

// A free line beside the wall: distance = offset + tilt x (at - middle) - out.
struct Line {
  Height height;
  bool from_right;
  const std::vector<Station>& stations;
};

double middle_of(const std::vector<Station>& stations) {
  double sum = 0;
  for (const Station& station : stations) sum += station.at.mm;
  return stations.empty() ? 0 : sum / static_cast<double>(stations.size());
}

void observe_line(RoomModel& model, int wall, const Line& line) {
  const std::string& name = model.survey->walls[wall].name;
  const int offset = model.add({UnknownKind::offset, wall, name, 0, 0});
  const int tilt = model.add({UnknownKind::tilt, wall, name, 0, 0});
  const double middle = middle_of(line.stations);
  const Height height = line.height;
  const bool from_right = line.from_right;
  for (const Station& station : line.stations)
    for (const Reading& reading : station.reading) {
      const Observed how{worth(*model.survey, reading, Ends::marks), wall};
      const double at = station.at.mm;
      const double board = board_at(model, wall, height, reading.on);
      observe(model, reading, how, [=](View& view) {
        const double z = view.z_along(height, wall, at, from_right);
        const double a = view.base_along(wall, at, z, from_right);
        return view.unknown(offset) + view.unknown(tilt) * (at - middle) - view.out(wall, a, z) -
               board;
      });
    }
}

const Station& lowest(const std::vector<Station>& stations) {
  return *std::min_element(
      stations.begin(), stations.end(),
      [](const Station& a, const Station& b) { return a.height.value < b.height.value; });
}

void observe_plumb(RoomModel& model, int wall, const PlumbReading& plumb) {
  if (plumb.line.empty()) return;
  const int offset = model.add({UnknownKind::offset, wall, model.survey->walls[wall].name, 0, 0});
  const Height foot = lowest(plumb.line).height;
  const double at = plumb.at.mm;
  const bool from_right = plumb.from_right;
  for (const Station& station : plumb.line)
    for (const Reading& reading : station.reading) {
      const Observed how{worth(*model.survey, reading, Ends::marks), wall};
      const Height height = station.height;
      const double board = board_at(model, wall, height, reading.on);
      observe(model, reading, how, [=](View& view) {
        const double a =
            view.base_along(wall, at, view.z_along(foot, wall, at, from_right), from_right);
        return view.unknown(offset) -
               view.out(wall, a, view.z_along(height, wall, at, from_right)) - board;
      });
    }
}

}  // namespace

void observe_walls(RoomModel& model) {
  for (int k = 0; k < model.walls(); ++k) {
    const Wall& wall = model.survey->walls[k];
    observe_length(model, k);
    for (const LevelReading& level : wall.levels) observe_level(model, k, level);
    for (const StraightedgeReading& stick : wall.straightedges)
      observe_line(model, k, {stick.height, stick.from_right, stick.gaps});
    for (const PlumbReading& plumb : wall.plumbs) observe_plumb(model, k, plumb);
    for (const StringReading& string : wall.strings)
      observe_line(model, k, {string.height, string.from_right, string.line});
  }
}

}  // namespace nook
