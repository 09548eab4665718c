// Lengths, the floor, diagonals across corners, levels and strings beside the pieces.
#include <algorithm>
#include <cmath>

#include "job/walk_part.h"
#include "job/walk_sketch.h"

namespace nook {
namespace {

using Done = TextEdit::Done;

std::string wall_path(int wall) {
  return "wall[" + std::to_string(wall) + "]";
}

bool is_between(const Survey& survey, int wall) {
  return wall > 0 && wall + 1 < static_cast<int>(survey.walls.size());
}

// The floor or the ceiling, from the level line.
struct Level {
  const std::vector<DropReading>& read;
  const char *name, *key, *ask, *inches, *mm, *sketch;
};

// "[left, 6, 4, reading]" for a drop from the level line, or a rise.
void ask_level(const Walk& walk, const Level& level, int wall, double along,
               std::vector<Question>& to) {
  const Survey& survey = walk.survey;
  const std::string name = survey.walls[wall].name, at = easy(survey, along),
                    out = easy(survey, 100);
  for (const DropReading& drop : level.read)
    if (drop.wall == wall && any_counts(drop.drop) && is_near(drop.along.mm, along)) return;
  to.push_back({std::string(level.name) + " " + name + " " + at,
                std::string(level.ask) + ", " + at + " along the " + name + " wall, " + out +
                    " out from it?",
                like(survey.units, level.inches, level.mm), level.sketch, false,
                [=, table = level.name, key = level.key](TextEdit& edit, const Answers& answers) {
                  const std::string item = "[" + quoted(name) + ", " + quoted(at) + ", " +
                                           quoted(out) + ", " + readings(answers) + "]";
                  return add_to(edit, table, key, item);
                }});
}

// Corner to corner, mm: what no one raises without looking up. Chosen.
constexpr double kTall = 1800;

bool is_tall(const Part& part) {
  const Polygon& ring = part.outline;
  return std::any_of(ring.begin(), ring.end(),
                     [&](Vec2 corner) { return norm(corner - ring.front()) > kTall; });
}

bool meets_ceiling(const Contact& contact) {
  return contact.meets == "ceiling";
}

constexpr double kUnknownWall = 1830;  // mm, 6 ft, of a wall whose length nothing says. Chosen
constexpr double kEnd = 10;            // mm that a mark stays off a wall's end. Chosen

struct Marks {
  double first, second;
};

// Where the file takes another diagonal of a corner, and how high its marks are.
struct CornerEntry {
  std::string path;     // empty: into an entry of its own
  bool listed = false;  // it has diagonals
  bool high = false;    // it says how high
  std::string height;
};
CornerEntry entry_of(const Walk& walk, const Corner& corner) {
  CornerEntry entry{"", false, false, easy(walk.survey, walk.spots[corner.walls[0]].height)};
  if (corner.entry < 0 || corner.right_first || corner.height.from_line) return entry;
  const std::string own = "corner[" + std::to_string(corner.entry) + "]";
  const auto& diagonals = corner.diagonals;
  entry.listed = std::any_of(diagonals.begin(), diagonals.end(), [&](const Diagonal& diagonal) {
    return diagonal.straight.front().id.starts_with(own + ".");
  });
  entry.high = corner.height.place.line > 0;
  // Said now, a height would move what was read at the usual one.
  const bool bare = diagonals.empty() && corner.squares.empty() && corner.angles.empty();
  if (entry.high || entry.listed || bare) entry.path = own;
  if (entry.high || entry.listed) entry.height = easy(walk.survey, corner.height.value.mm);
  return entry;
}

bool counts(const Diagonal& diagonal) {
  return !diagonal.first.struck && !diagonal.second.struck && any_counts(diagonal.straight);
}

void ask_diagonal(const Walk& walk, int corner, Marks marks, std::vector<Question>& to) {
  const Survey& survey = walk.survey;
  const Corner& entry = survey.corners[corner];
  for (const Diagonal& diagonal : entry.diagonals)
    if (counts(diagonal) && is_near(diagonal.first.value.mm, marks.first) &&
        is_near(diagonal.second.value.mm, marks.second))
      return;
  const std::string left = survey.walls[entry.walls[0]].name,
                    right = survey.walls[entry.walls[1]].name;
  const std::string a = easy(survey, marks.first), b = easy(survey, marks.second);
  const CornerEntry into = entry_of(walk, entry);
  const std::string height = into.height;
  to.push_back({"diagonal " + left + "/" + right + " " + a + " " + b,
                "Straight tape from a mark " + a + " along the " + left + " wall to one " + b +
                    " along the " + right + " wall, from the corner, both " + height + " up?",
                easy(survey, std::hypot(marks.first, marks.second)), kDiagonalSketch, false,
                [=](TextEdit& edit, const Answers& answers) {
                  const std::string item =
                      "[" + quoted(a) + ", " + quoted(b) + ", " + readings(answers) + "]";
                  if (into.listed) return edit.append(key_path(into.path + ".diagonals"), item);
                  if (into.path.empty())
                    return edit.append_table(key_path("corner"),
                                             "walls = [" + quoted(left) + ", " + quoted(right) +
                                                 "]\nheight = " + quoted(height) +
                                                 "\ndiagonals = [" + item + "]\n");
                  Done done;
                  if (!into.high) done = edit.set(key_path(into.path + ".height"), quoted(height));
                  return done.and_then([&] {
                    return edit.set(key_path(into.path + ".diagonals"), "[" + item + "]");
                  });
                }});
}

// "1/4 top" -> the gap and where it is. Repeats have one end, that of those not struck.
Done write_level(TextEdit& edit, const std::string& list, const std::string& spot,
                 const Answers& answers) {
  Answers gaps;
  std::string end;
  for (const Answer& answer : answers) {
    const auto ended = ended_gap(answer.text, "top", "bottom");
    if (!ended) return tl::unexpected(ended.error());
    gaps.push_back({ended->gap, answer.struck});
    if (answer.struck || ended->nothing) continue;
    if (!end.empty() && end != ended->end)
      return tl::unexpected("it gapped at the " + end + " before: 'back' takes that one anew");
    end = ended->end;
  }
  return edit.append_table(key_path(list), spot + "gap = " + readings(gaps) + "\ngap_at = " +
                                               quoted(end.empty() ? "top" : end) + "\n");
}

void ask_level(const Walk& walk, int wall, double along, std::vector<Question>& to) {
  const Survey& survey = walk.survey;
  const Wall& entry = survey.walls[wall];
  for (const LevelReading& level : entry.levels)
    if (any_counts(level.gap) && is_near(level.at.mm, along)) return;
  const double foot = std::max(200.0, entry.baseboard ? entry.baseboard->height.mm + 50 : 200.0);
  const std::string at = easy(survey, along), from = easy(survey, foot),
                    until = easy(survey, foot + survey.level.length.mm);
  const std::string spot =
      "at = " + quoted(at) + "\nfrom = " + quoted(from) + "\nto = " + quoted(until) + "\n";
  to.push_back({"level " + entry.name + " " + at,
                "Level held plumb on the " + entry.name + " wall " + at +
                    " from the corner, from " + from + " to " + until +
                    " up: the gap, and at which end?",
                like(survey.units, "3/16 top", "5 top"), kLevelSketch, false,
                [=](TextEdit& edit, const Answers& answers) {
                  return write_level(edit, wall_path(wall) + ".level", spot, answers);
                }});
}

// "41 up", "6 under the level line".
std::string said_height(const Survey& survey, const Height& height) {
  const std::string size = easy(survey, std::abs(height.value.mm));
  if (!height.from_line) return size + " up";
  return size + (height.value.mm < 0 ? " under" : " over") + " the level line";
}

void ask_string(const Walk& walk, int wall, double along, std::vector<Question>& to) {
  const Survey& survey = walk.survey;
  const Wall& entry = survey.walls[wall];
  const bool first = entry.strings.empty();
  if (!first)
    for (const Station& station : entry.strings.front().line)
      if (any_counts(station.reading) && is_near(station.at.mm, along)) return;
  const std::string at = easy(survey, along), height = easy(survey, walk.spots[wall].height);
  const std::string up = first ? height + " up" : said_height(survey, entry.strings.front().height);
  to.push_back({"string " + entry.name + " " + at,
                "String or level laser along the " + entry.name + " wall, " + up +
                    ": line to wall " + at + " from the corner?",
                like(survey.units, "1 1/16", "26"), kStringSketch, false,
                [=](TextEdit& edit, const Answers& answers) {
                  const std::string item = "[" + quoted(at) + ", " + readings(answers) + "]";
                  const std::string list = wall_path(wall) + ".string";
                  if (!first) return edit.append(key_path(list + "[0].line"), item);
                  return edit.append_table(
                      key_path(list), "height = " + quoted(height) + "\nline = [" + item + "]\n");
                }});
}

// Struck lengths stay: the new one is another of the same.
Done write_length(TextEdit& edit, int wall, const Readings& before, const Answers& answers) {
  const KeyPath path = key_path(wall_path(wall) + ".length");
  if (before.empty()) return edit.set(path, readings(answers));
  std::string list;
  for (const Reading& old : before) list += struck(old) + ", ";
  for (const Answer& answer : answers)
    list += reading(answer.text, answer.struck) + (&answer == &answers.back() ? "" : ", ");
  return edit.set(path, "[" + list + "]");
}

void ask_length(const Walk& walk, int wall, std::vector<Question>& to) {
  const Wall& entry = walk.survey.walls[wall];
  if (entry.longest()) return;
  const bool between = is_between(walk.survey, wall);
  to.push_back({"length " + entry.name,
                "Length of the " + entry.name + " wall, from " +
                    (between ? "corner to corner?" : "the corner to its far end?"),
                from_corner(walk.survey, "118 3/8", "3007"), kLengthSketch, false,
                [wall, before = entry.length](TextEdit& edit, const Answers& answers) {
                  return write_length(edit, wall, before, answers);
                }});
}

bool has_plumb(const Wall& wall) {
  return std::any_of(wall.plumbs.begin(), wall.plumbs.end(), [](const PlumbReading& plumb) {
    return std::any_of(plumb.line.begin(), plumb.line.end(),
                       [](const Station& station) { return any_counts(station.reading); });
  });
}

}  // namespace

void add_lengths(const Walk& walk, std::vector<Question>& to) {
  for (int wall = 0; wall < static_cast<int>(walk.survey.walls.size()); ++wall) {
    const Wall& entry = walk.survey.walls[wall];
    ask_length(walk, wall, to);
    if (entry.baseboard) continue;
    to.push_back(
        {"baseboard " + entry.name,
         "Baseboard on the " + entry.name + " wall: its height and thickness? (skip: none)",
         like(walk.survey.units, "5 1/4, 9/16", "120, 15"), kBoardSketch, false,
         [wall](TextEdit& edit, const Answers& answers) -> Done {
           const std::vector<std::string> parts = parts_of(answers.back().text);
           if (parts.size() != 2)
             return tl::unexpected(std::string("say its height, a comma, its thickness"));
           return edit.set(
               key_path(wall_path(wall) + ".baseboard"),
               "{ height = " + quoted(parts[0]) + ", thickness = " + quoted(parts[1]) + " }");
         }});
  }
}

void add_floor(const Walk& walk, std::vector<Question>& to) {
  const Level floor{walk.survey.floor.down,
                    "floor",
                    "down",
                    "Level line down to the floor",
                    "40 1/8",
                    "1020",
                    kFloorSketch};
  for (int wall = 0; wall < static_cast<int>(walk.spots.size()) && wall < 2; ++wall)
    for (const double along : {walk.spots[wall].along.front(), walk.spots[wall].reach})
      ask_level(walk, floor, wall, along, to);
}

// Where something meets the ceiling, at the spots of the floor; at one, where something tall is
// raised under it.
void add_ceiling(const Walk& walk, std::vector<Question>& to) {
  if (!walk.design) return;
  const Level ceiling{
      walk.survey.ceiling, "ceiling", "up", "Level line up to the ceiling", "56 1/4", "1430",
      kCeilingSketch};
  const auto& contacts = walk.design->contacts;
  const auto& parts = walk.design->parts;
  const bool meets = std::any_of(contacts.begin(), contacts.end(), meets_ceiling);
  if (!meets && (!walk.survey.ceiling.empty() || std::none_of(parts.begin(), parts.end(), is_tall)))
    return;
  for (int wall = 0; wall < static_cast<int>(walk.spots.size()) && wall < (meets ? 2 : 1); ++wall) {
    ask_level(walk, ceiling, wall, walk.spots[wall].along.front(), to);
    if (meets) ask_level(walk, ceiling, wall, walk.spots[wall].reach, to);
  }
}

// A 3-4-5 corner both ways and its square, in the largest feet (300 mm) or parts of them that both
// walls have room for.
std::vector<Marks> marks_in(const Survey& survey, const Corner& corner) {
  const bool inch = survey.units == Unit::inch;
  const auto room_on = [&](int wall) {
    const auto length = survey.walls[wall].longest();
    return length ? length->mm - kEnd : kUnknownWall;
  };
  for (const double part : {1.0, 1.0 / 2, 1.0 / 3, 1.0 / 6}) {
    const double unit = part * (inch ? 12 * kMillimetresPerInch : 300);
    std::vector<Marks> fitting;
    for (const Marks marks :
         {Marks{3 * unit, 4 * unit}, Marks{4 * unit, 3 * unit}, Marks{5 * unit, 5 * unit}})
      if (marks.first < room_on(corner.walls[0]) && marks.second < room_on(corner.walls[1]))
        fitting.push_back(marks);
    if (fitting.size() >= 2) return fitting;
  }
  return {};
}

void add_corners(const Walk& walk, std::vector<Question>& to) {
  for (int k = 0; k < static_cast<int>(walk.survey.corners.size()); ++k)
    for (const Marks marks : marks_in(walk.survey, walk.survey.corners[k]))
      ask_diagonal(walk, k, marks, to);
}

void add_across(const Walk& walk, std::vector<Question>& to) {
  const Survey& survey = walk.survey;
  if (survey.walls.size() != 3) return;
  const std::string left = survey.walls[0].name, back = survey.walls[1].name,
                    right = survey.walls[2].name;
  const double deep = std::min(walk.spots[0].reach, walk.spots[2].reach);
  const std::string out = easy(survey, deep * 0.8), height = easy(survey, walk.spots[1].height);
  if (std::any_of(survey.across.begin(), survey.across.end(),
                  [](const Across& across) { return any_counts(across.is); }))
    return;
  to.push_back({"across",
                "Across from the " + left + " to the " + right + " wall, " + out +
                    " out from the " + back + " wall, " + height + " up?",
                from_corner(survey, "47 1/4", "1202"), kAcrossSketch, false,
                [=](TextEdit& edit, const Answers& answers) {
                  return edit.append_table(key_path("across"),
                                           "walls = [" + quoted(left) + ", " + quoted(right) +
                                               "]\nout = " + quoted(out) +
                                               "\nheight = " + quoted(height) +
                                               "\nis = " + readings(answers) + "\n");
                }});
}

void add_levels(const Walk& walk, std::vector<Question>& to) {
  for (int wall = 0; wall < static_cast<int>(walk.spots.size()); ++wall)
    for (const double along : walk.spots[wall].along)
      if (!has_plumb(walk.survey.walls[wall])) ask_level(walk, wall, along, to);
}

void add_strings(const Walk& walk, std::vector<Question>& to) {
  // Every 16 in (400 mm) is usual: common practice, no source.
  const double step = walk.survey.units == Unit::inch ? 16 * kMillimetresPerInch : 400;
  for (int wall = 0; wall < static_cast<int>(walk.spots.size()); ++wall) {
    const auto length = walk.survey.walls[wall].longest();
    const double end = walk.spots[wall].reach + step / 2, first = step / 8;
    const double until = length ? std::min(end, length->mm - first + kEnd) : end;
    for (double along = first; along < until; along += step) ask_string(walk, wall, along, to);
  }
}

}  // namespace nook
