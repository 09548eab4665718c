// Foretells a straight tape: for --expect, and the one to take before cutting.
#include "command/foretell.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "command/style.h"
#include "room/counted.h"
#include "survey/worth.h"

namespace nook {
namespace {

constexpr double kOffCorner = 50;    // mm that a mark stays off a wall's other corner. Chosen
constexpr double kLeastReach = 305;  // mm, a foot: nearer marks tell little of an angle. Chosen

UsageFault misasked(const std::string& what) {
  return {what, "expect", "like --expect left:50 right:70 height:30, or --expect mark:A mark:B"};
}

/// "left:50 1/2" -> "left", "50 1/2".
struct Word {
  std::string key, value;
};
Word split(const std::string& word) {
  const auto colon = word.find(':');
  if (colon == std::string::npos || colon == 0 || colon + 1 == word.size()) {
    throw misasked(fmt::format("'{}' is no mark", word));
  }
  return {word.substr(0, colon), word.substr(colon + 1)};
}

int wall_named(const Survey& survey, const std::string& name) {
  const auto found = std::find_if(survey.walls.begin(), survey.walls.end(),
                                  [&](const Wall& wall) { return wall.name == name; });
  if (found != survey.walls.end()) return static_cast<int>(found - survey.walls.begin());
  std::vector<std::string_view> names;
  for (const Wall& wall : survey.walls) names.push_back(wall.name);
  const std::string_view near = nearest(name, names);
  const std::string hint = near.empty() ? "" : fmt::format(", did you mean '{}'?", near);
  throw misasked(fmt::format("room.toml has no wall '{}'{}", name, hint));
}

// No wall is as long as a mark beyond its end wants it.
void require_on_wall(const Survey& survey, int wall, Length along) {
  const Wall& entry = survey.walls[wall];
  const std::optional<Length> longest = entry.longest();
  if (!longest || along <= *longest) return;
  const Rounding rounding = usual_rounding(survey.units);
  throw misasked(fmt::format("the {} wall is {} long: it has no mark {} along", entry.name,
                             with_unit(*longest, rounding), with_unit(along, rounding)));
}

Reading tape_reading(const Survey& survey, double mm) {
  Reading reading;
  reading.value = millimetres(mm);
  reading.smallest_mark = survey.tape.read_to;
  return reading;
}

/// Of a tape between two marks, each laid off along its wall; `pull` is how far the distance moves
/// with each mark.
double taped_sd(const Survey& survey, const Foretold& foretold, const double (&pull)[2]) {
  const Worth straight = worth(survey, tape_reading(survey, foretold.value->value), Ends::marks);
  double variance = std::pow(foretold.value->sd, 2) + std::pow(straight.sd, 2);
  double scale = straight.tape;
  for (int end = 0; end < 2; ++end) {
    if (!foretold.along[end]) continue;
    const Worth mark =
        worth(survey, tape_reading(survey, foretold.along[end]->mm), Ends::inside_corner);
    variance += std::pow(pull[end] * mark.sd, 2);
    scale -= pull[end] * mark.tape;  // a long tape lays the marks too near, and reads them short
  }
  return std::sqrt(variance + scale * scale);
}

/// `marks` are on wall `corner` and on the next one.
Foretold diagonal(const Job& job, const RoomWorked& room, int corner, Foretold asked) {
  const double a = asked.along[0]->mm, b = asked.along[1]->mm;
  const auto value = room.adjustment.expected_diagonal(corner, a, b, asked.height->mm);
  if (!value) {
    asked.why_not = value.error();
    return asked;
  }
  asked.value = *value;
  const double cosine = (a * a + b * b - value->value * value->value) / (2 * a * b);
  const double pull[2] = {(a - b * cosine) / value->value, (b - a * cosine) / value->value};
  asked.tape_sd = taped_sd(job.survey, asked, pull);
  return asked;
}

Foretold between_walls(const std::vector<Word>& words, const Job& job, const RoomWorked& room) {
  struct Mark {
    int wall;
    Length along;
  };
  std::vector<Mark> marks;
  Length height = kUnsaidHeight.value;
  for (const Word& word : words) {
    const Length length = length_given("--expect", word.value, job.survey.units);
    if (word.key == "height") {
      height = length;
    } else {
      marks.push_back({wall_named(job.survey, word.key), length});
    }
  }
  if (marks.size() != 2) throw misasked("two marks are wanted, each on its wall");
  if (marks[0].wall > marks[1].wall) std::swap(marks[0], marks[1]);
  if (marks[1].wall != marks[0].wall + 1) throw misasked("the two walls share no corner");
  if (marks[0].along.mm <= 0 || marks[1].along.mm <= 0) {
    throw misasked("a mark stands some way from the corner");
  }
  for (const Mark& mark : marks) require_on_wall(job.survey, mark.wall, mark.along);
  const auto& walls = job.survey.walls;
  return diagonal(job, room, marks[0].wall,
                  {{walls[marks[0].wall].name, walls[marks[1].wall].name},
                   {marks[0].along, marks[1].along},
                   height,
                   {},
                   0,
                   ""});
}

void require_mark(const Survey& survey, const std::string& name) {
  std::vector<std::string> known = survey.marks;
  for (const Corner& corner : survey.corners) {
    known.push_back(survey.walls[corner.walls[0]].name + "/" + survey.walls[corner.walls[1]].name);
  }
  if (std::find(known.begin(), known.end(), name) != known.end()) return;
  const std::string_view near = nearest(name, {known.begin(), known.end()});
  const std::string hint = near.empty() ? "" : fmt::format(", did you mean '{}'?", near);
  throw misasked(fmt::format("room.toml has no mark '{}'{}", name, hint));
}

Foretold between_marks(const std::vector<Word>& words, const Job& job, const RoomWorked& room) {
  if (words.size() != 2 || words[0].key != "mark" || words[1].key != "mark") {
    throw misasked("two marks are wanted: mark:A mark:B");
  }
  for (const Word& word : words) require_mark(job.survey, word.value);
  Foretold asked{{words[0].value, words[1].value}, {}, {}, {}, 0, ""};
  const auto value = room.adjustment.expected_span(words[0].value, words[1].value);
  if (!value) {
    asked.why_not = value.error();
    return asked;
  }
  asked.value = *value;
  asked.tape_sd = taped_sd(job.survey, asked, {0, 0});
  return asked;
}

/// Of a height that may count from the level line.
Length above_floor(const Height& height, const RoomShape& room) {
  return height.from_line ? millimetres(room.line_z.value_or(0)) + height.value : height.value;
}

/// The furthest that any piece comes from corner `corner` along wall `wall`, or a foot, which still
/// tells the angle; rounded down to a mark that is easy to lay off on the wall.
Length reach_along(const Job& job, const RoomShape& room, int wall, const FitAnswer& fit) {
  const int corner = job.origin_corner;
  const double start = room.corner_along(corner, wall, 0);
  double far = kLeastReach;
  for (std::size_t i = 0; i < fit.pieces.size(); ++i) {
    for (const Vec2 point : fit.pieces[i].drawn->outline) {
      const Vec3 p = fit.frames[i].room_from_piece({point.x, point.y, 0});
      const double along = room.walls[wall].wall_from_room({p.x, p.y}).x;
      far = std::max(far, wall == corner && corner > 0 ? start - along : along - start);
    }
  }
  const bool ends_in_corner = wall > 0 && wall + 1 < static_cast<int>(room.walls.size());
  if (ends_in_corner) far = std::min(far, room.walls[wall].length - kOffCorner);
  if (const auto longest = job.survey.walls[wall].longest())
    far = std::min(far, longest->mm - (ends_in_corner ? kOffCorner : 0));
  const double step = job.survey.units == Unit::inch ? kMillimetresPerInch : 10;
  return millimetres(std::max(1.0, std::floor(far / step)) * step);
}

}  // namespace

void require_marks(const std::vector<std::string>& words) {
  for (const std::string& word : words)
    if (word.find(':') == std::string::npos)
      throw UsageFault(fmt::format("'{}' is no mark", word), "expect",
                       "a mark is like left:50 or mark:NAME; the job stands before --expect");
}

Foretold foretell(const std::vector<std::string>& words, const Job& job, const RoomWorked& room) {
  std::vector<Word> split_words;
  for (const std::string& word : words) split_words.push_back(split(word));
  const bool marks = std::any_of(split_words.begin(), split_words.end(),
                                 [](const Word& word) { return word.key == "mark"; });
  return marks ? between_marks(split_words, job, room) : between_walls(split_words, job, room);
}

Foretold proof_of(const Job& job, const RoomWorked& room, const FitAnswer& fit) {
  const int k = job.origin_corner;
  const auto& walls = job.survey.walls;
  Foretold asked{{walls[k].name, walls[k + 1].name}, {}, {}, {}, 0, ""};
  if (!room.adjustment.complete()) {
    asked.why_not = "the readings do not say yet";
    return asked;
  }
  for (int side = 0; side < 2; ++side) {
    asked.along[side] = reach_along(job, room.adjustment.room(), k + side, fit);
  }
  const auto taken = std::find_if(job.survey.corners.begin(), job.survey.corners.end(),
                                  [&](const Corner& corner) { return corner.walls[0] == k; });
  asked.height = taken == job.survey.corners.end() ? kUnsaidHeight.value
                                                   : above_floor(taken->height, room.shape());
  return diagonal(job, room, k, asked);
}

}  // namespace nook
