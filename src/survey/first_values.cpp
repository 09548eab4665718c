// Angles by the law of cosines, lengths and heights by averages.
#include "survey/first_values.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "survey/extents.h"

namespace nook {
namespace {

constexpr double kRightAngle = std::numbers::pi / 2;
constexpr double kUsualLength = 2440;  // mm, 8 ft. Chosen
constexpr double kBeyond = 300;        // mm past the last thing read on a wall. Chosen
constexpr double kUsualLine = 1000;    // mm. Chosen
constexpr double kUsualUp = 1440;      // from the line to the ceiling, mm. Chosen

double middle(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t half = values.size() / 2;
  return values.size() % 2 ? values[half] : (values[half - 1] + values[half]) / 2;
}

void add_diagonals(const Corner& corner, std::vector<double>& angles) {
  for (const Diagonal& diagonal : corner.diagonals) {
    const double a = diagonal.first.value.mm, b = diagonal.second.value.mm;
    for (const Reading& straight : diagonal.straight) {
      if (straight.struck || diagonal.first.struck || diagonal.second.struck) continue;
      const double c = straight.value.mm;
      angles.push_back(std::acos(std::clamp((a * a + b * b - c * c) / (2 * a * b), -0.9, 0.9)));
    }
  }
}

void add_squares(const Corner& corner, std::vector<double>& angles) {
  for (const AngleReading& reading : corner.angles)
    if (!reading.struck) angles.push_back(reading.value.rad);
  for (const SquareReading& square : corner.squares)
    for (const Reading& gap : square.gap) {
      const double open = std::atan2(gap.value.mm, square.blade.mm);
      if (!gap.struck) angles.push_back(kRightAngle + (square.gap_at_tip ? open : -open));
    }
}

double mean_drop(const std::vector<DropReading>& drops, double otherwise) {
  double sum = 0;
  int count = 0;
  for (const DropReading& drop : drops)
    for (const Reading& reading : drop.drop)
      if (!reading.struck) sum += reading.value.mm, ++count;
  return count ? sum / count : otherwise;
}

bool from_line(const Wall& wall) {
  const auto any = [](const auto& entries, auto&& test) {
    return std::any_of(entries.begin(), entries.end(), test);
  };
  return (wall.length_height && wall.length_height->from_line) ||
         any(wall.levels, [](auto& e) { return e.from.from_line || e.to.from_line; }) ||
         any(wall.straightedges, [](auto& e) { return e.height.from_line; }) ||
         any(wall.strings, [](auto& e) { return e.height.from_line; }) ||
         any(wall.obstacles,
             [](auto& e) { return e.height[0].from_line || e.height[1].from_line; }) ||
         (wall.studs &&
          any(wall.studs->found, [](auto& e) { return e.height && e.height->from_line; })) ||
         (wall.studs &&
          any(wall.studs->blocking,
              [](auto& e) { return e.height[0].from_line || e.height[1].from_line; })) ||
         any(wall.plumbs, [&](auto& e) {
           return any(e.line, [](auto& station) { return station.height.from_line; });
         });
}

bool from_line(const Corner& corner) {
  const auto from = [](const auto& entry) { return entry.height.from_line; };
  return std::any_of(corner.diagonals.begin(), corner.diagonals.end(), from) ||
         std::any_of(corner.squares.begin(), corner.squares.end(), from) ||
         std::any_of(corner.angles.begin(), corner.angles.end(), from);
}

bool from_line(const Span& span) {
  return (span.between[0].height && span.between[0].height->from_line) ||
         (span.between[1].height && span.between[1].height->from_line);
}

bool from_line(const Installed& up) {
  return std::any_of(up.openings.begin(), up.openings.end(), [](const Opening& opening) {
    return opening.height && opening.height->from_line;
  });
}

}  // namespace

double mean_or(const Readings& readings, double otherwise) {
  double sum = 0;
  int count = 0;
  for (const Reading& reading : readings)
    if (!reading.struck) sum += reading.value.mm, ++count;
  return count ? sum / count : otherwise;
}

double first_angle(const Survey& survey, int corner) {
  std::vector<double> angles;
  for (const Corner& entry : survey.corners)
    if (entry.walls[0] == corner) add_diagonals(entry, angles);
  if (!angles.empty()) return middle(std::move(angles));
  for (const Corner& entry : survey.corners)
    if (entry.walls[0] == corner) add_squares(entry, angles);
  return angles.empty() ? kRightAngle : middle(std::move(angles));
}

double first_length(const Survey& survey, int wall) {
  const double usual = std::max(kUsualLength, farthest_on(survey, wall) + kBeyond);
  const bool between = wall > 0 && wall + 1 < static_cast<int>(survey.walls.size());
  if (!between) return mean_or(survey.walls[wall].length, usual);
  for (const Across& across : survey.across)
    if (across.walls[0] == wall - 1)
      return mean_or(survey.walls[wall].length, mean_or(across.is, usual));
  return mean_or(survey.walls[wall].length, usual);
}

double first_line(const Survey& survey) {
  return mean_drop(survey.floor.down, kUsualLine);
}

double first_ceiling(const Survey& survey) {
  return first_line(survey) + mean_drop(survey.ceiling, kUsualUp);
}

bool uses_level_line(const Survey& survey) {
  if (!survey.floor.down.empty() || !survey.ceiling.empty()) return true;
  const auto from = [](const auto& entry) { return from_line(entry); };
  return std::any_of(survey.walls.begin(), survey.walls.end(), from) ||
         std::any_of(survey.corners.begin(), survey.corners.end(), from) ||
         std::any_of(survey.spans.begin(), survey.spans.end(), from) ||
         std::any_of(survey.installed.begin(), survey.installed.end(), from) ||
         std::any_of(survey.across.begin(), survey.across.end(),
                     [](const Across& across) { return across.height.from_line; });
}

}  // namespace nook
