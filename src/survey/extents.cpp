// Extents from lengths, readings and common sizes.
#include "survey/extents.h"

#include <algorithm>

#include "room/counted.h"
#include "survey/base_lines.h"
#include "survey/first_values.h"

namespace nook {
namespace {

constexpr double kUsualWall = 2440;  // high, 8 ft, mm. Chosen
constexpr double kHighest = 12000;   // mm: above it a wall goes on as it is there. Chosen
constexpr double kAround = 200;      // about every surface, mm: a lean may move a corner. Chosen

void reach(double& far, Length at) {
  far = std::max(far, at.mm);
}

bool counts(const Station& station) {
  return any_counts(station.reading);
}

double farthest_entry(const Wall& wall) {
  double far = 0;
  for (const auto& level : wall.levels)
    if (any_counts(level.gap)) reach(far, level.at);
  for (const auto& plumb : wall.plumbs)
    if (std::any_of(plumb.line.begin(), plumb.line.end(), counts)) reach(far, plumb.at);
  for (const auto& stick : wall.straightedges)
    for (const Station& gap : stick.gaps)
      if (counts(gap)) reach(far, gap.at);
  for (const auto& string : wall.strings)
    for (const Station& line : string.line)
      if (counts(line)) reach(far, line.at);
  for (const auto& obstacle : wall.obstacles) reach(far, obstacle.along[1]);
  if (!wall.studs) return far;
  for (const StudFound& stud : wall.studs->found)
    for (const auto* list : {&stud.left_edge, &stud.right_edge, &stud.centre})
      for (const Reading& reading : *list)
        if (!reading.struck) reach(far, reading.value);
  return far;
}

double highest(const Survey& survey) {
  double high = kUsualWall;
  const double line = first_line(survey);
  const auto see = [&](const Height& height) {
    high = std::max(high, height.value.mm + (height.from_line ? line : 0));
  };
  for (const Wall& wall : survey.walls) {
    for (const auto& level : wall.levels)
      if (any_counts(level.gap)) see(level.from), see(level.to);
    for (const auto& stick : wall.straightedges)
      if (std::any_of(stick.gaps.begin(), stick.gaps.end(), counts)) see(stick.height);
    for (const auto& string : wall.strings)
      if (std::any_of(string.line.begin(), string.line.end(), counts)) see(string.height);
    for (const auto& plumb : wall.plumbs)
      for (const Station& station : plumb.line)
        if (counts(station)) see(station.height);
  }
  for (const DropReading& up : survey.ceiling)
    for (const Reading& reading : up.drop)
      if (!reading.struck) high = std::max(high, line + reading.value.mm);
  return std::min(high, kHighest);
}

}  // namespace

double farthest_on(const Survey& survey, int wall) {
  double far = farthest_entry(survey.walls[wall]);
  for (const Corner& corner : survey.corners)
    for (const Diagonal& diagonal : corner.diagonals) {
      if (!any_counts(diagonal.straight)) continue;
      if (corner.walls[0] == wall && !diagonal.first.struck) reach(far, diagonal.first.value);
      if (corner.walls[1] == wall && !diagonal.second.struck) reach(far, diagonal.second.value);
    }
  for (const Span& span : survey.spans)
    for (const SpanEnd& end : span.between)
      if (end.mark.empty() && end.wall == wall && !end.along.struck && any_counts(span.is))
        reach(far, end.along.value);
  for (const auto* drops : {&survey.floor.down, &survey.ceiling})
    for (const DropReading& drop : *drops)
      if (drop.wall == wall && any_counts(drop.drop)) reach(far, drop.along);
  return far;
}

Extent wall_extent(const Survey& survey, int wall, double length) {
  const bool between = wall > 0 && wall + 1 < static_cast<int>(survey.walls.size());
  const double far = between ? length : std::max(length, farthest_on(survey, wall));
  return {{-kAround, -kAround}, {far + kAround, highest(survey) + kAround}};
}

Extent level_extent(const RoomModel& model) {
  double low = -kAround, high = kUsualWall;
  const State state = first_state(model);
  RoomModel bare = model;
  bare.surfaces.assign(model.walls() + 2, {});
  const RoomShape room = room_shape(bare, state);
  for (const WallShape& wall : room.walls)
    for (const double a : {0.0, wall.length}) {
      const Vec2 p = room.floor.field_from_room(wall.room_from_wall(a, 0));
      low = std::min({low, p.x, p.y});
      high = std::max({high, p.x, p.y});
    }
  return {{low - kAround, low - kAround}, {high + kAround, high + kAround}};
}

}  // namespace nook
