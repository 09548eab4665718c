// What one looks for and lists: what lies on the floor, studs, obstacles, doors.
#include "job/walk_part.h"
#include "job/walk_sketch.h"
#include "room/covering.h"

namespace nook {
namespace {

using Done = TextEdit::Done;
using Parts = std::vector<std::string>;

// "14 9/16, 16 1/16 nail" -> the numbers, and by what it was found.
struct Found {
  Parts numbers;
  std::string by = "finder";
};
Found found_in(std::string answer) {
  Found found;
  for (const std::string way : {"nail", "magnet", "finder"})
    if (answer.ends_with(" " + way)) {
      found.by = way;
      answer = answer.substr(0, answer.size() - way.size() - 1);
    }
  found.numbers = parts_of(answer);
  return found;
}

// The keys of one find.
tl::expected<Parts, std::string> stud_of(const std::string& answer, const std::string& height) {
  const Found found = found_in(answer);
  if (found.numbers.empty() || found.numbers.size() > 2)
    return tl::unexpected(std::string("say both edges with a comma between, or the center"));
  const std::string where = found.numbers.size() == 1 ? "centre = " + quoted(found.numbers[0])
                                                      : "edges = [" + quoted(found.numbers[0]) +
                                                            ", " + quoted(found.numbers[1]) + "]";
  return Parts{where, "height = " + quoted(height), "by = " + quoted(found.by)};
}

// Each followed by `after`, the last one by nothing.
std::string joined(const Parts& keys, const std::string& after) {
  std::string text;
  for (const std::string& key : keys) text += (text.empty() ? "" : after) + key;
  return text;
}

// Into the list, or the tables, that the file has; else into a list of its own.
Done write_stud(TextEdit& edit, int wall, const std::optional<Studs>& studs, const Parts& keys) {
  const KeyPath path = key_path("wall[" + std::to_string(wall) + "].studs"),
                list = key_path("wall[" + std::to_string(wall) + "].studs.found");
  const std::string item = "{ " + joined(keys, ", ") + " }";
  if (!studs) return edit.set(path, "{ kind = 'wood', found = [" + item + "] }");
  if (studs->found.empty()) return edit.set(list, "[" + item + "]");
  const Done listed = edit.append(list, item);
  return listed ? listed : edit.append_table(list, joined(keys, "\n") + "\n");
}

Done write_box(TextEdit& edit, int wall, const std::string& answer) {
  const auto space = answer.find(' ');
  const Parts parts = space == std::string::npos ? Parts{} : parts_of(answer.substr(space));
  if (parts.size() != 4 && parts.size() != 5)
    return tl::unexpected(
        std::string("say what it is, then along from, to, height from, to; and how far it stands "
                    "out of the wall, if it does"));
  const std::string out = parts.size() == 5 ? "out = " + quoted(parts[4]) + "\n" : "";
  return edit.append_table(key_path("wall[" + std::to_string(wall) + "].obstacle"),
                           "kind = " + quoted(answer.substr(0, space)) + "\nalong = [" +
                               quoted(parts[0]) + ", " + quoted(parts[1]) + "]\nheight = [" +
                               quoted(parts[2]) + ", " + quoted(parts[3]) + "]\n" + out);
}

Done write_door(TextEdit& edit, const std::string& answer) {
  const Parts parts = parts_of(answer);
  if (parts.size() != 3)
    return tl::unexpected(std::string("say its name, its clear width and its height, with commas"));
  const std::string item = "{ name = " + quoted(parts[0]) + ", width = " + quoted(parts[1]) +
                           ", height = " + quoted(parts[2]) + " }";
  return add_to(edit, "access", "openings", item);
}

void ask_studs(const Walk& walk, int wall, double up, std::vector<Question>& to) {
  const Wall& entry = walk.survey.walls[wall];
  const std::string height = easy(walk.survey, up);
  const std::size_t known = entry.studs ? entry.studs->found.size() : 0;
  to.push_back({"stud " + entry.name + " " + height,
                "Studs of the " + entry.name + " wall, " + height + " up, " +
                    std::to_string(known) +
                    " found so far. The next: both edges or its center, and found by what? "
                    "(skip: no more)",
                like(walk.survey.units, "14 9/16, 16 1/16 nail", "370, 408 nail"), kStudSketch,
                true, [=, studs = entry.studs](TextEdit& edit, const Answers& answers) -> Done {
                  const auto keys = stud_of(answers.back().text, height);
                  if (!keys) return tl::unexpected(keys.error());
                  return write_stud(edit, wall, studs, *keys);
                }});
}

}  // namespace

TextEdit::Done write_covering(TextEdit& edit, const std::vector<std::string>& parts) {
  return set_in(edit, "floor", "covering",
                "{ kind = " + quoted(parts[0]) + ", thickness = " + quoted(parts[1]) + " }");
}

TextEdit::Done write_squash(TextEdit& edit, const std::vector<std::string>& parts) {
  return add_to(edit, "floor", "squash",
                "{ load = " + quoted(parts[0]) + ", on = [" + quoted(parts[1]) + ", " +
                    quoted(parts[2]) + "], by = " + quoted(parts[3]) + " }");
}

void add_studs(const Walk& walk, std::vector<Question>& to) {
  for (int wall = 0; wall < static_cast<int>(walk.spots.size()); ++wall)
    for (const double up : walk.spots[wall].fastened) ask_studs(walk, wall, up, to);
}

// What stands on a floor sinks into what lies on it.
void add_covering(const Walk& walk, std::vector<Question>& to) {
  const Floor& floor = walk.survey.floor;
  if (!walk.design || walk.design->feet.empty()) return;
  if (!floor.covering)
    to.push_back({"covering", "What lies on the floor, and how thick is it? (skip: it is bare)",
                  like(walk.survey.units, "carpet, 5/8", "carpet, 16"), kCoveringSketch, false,
                  [](TextEdit& edit, const Answers& answers) -> Done {
                    const Parts parts = parts_of(answers.back().text);
                    if (parts.size() != 2)
                      return tl::unexpected(std::string("say what it is, a comma, its thickness"));
                    return write_covering(edit, parts);
                  }});
  if (gives(floor) && floor.squash.empty())
    to.push_back({"squash",
                  "Stand on a block as large as a foot of the piece: your weight, the block's two "
                  "sides, how far it sinks?",
                  like(walk.survey.units, "180 lb, 3, 1 1/4, 3/8", "80 kg, 75, 32, 10"),
                  kCoveringSketch, false, [](TextEdit& edit, const Answers& answers) -> Done {
                    const Parts parts = parts_of(answers.back().text);
                    if (parts.size() != 4)
                      return tl::unexpected(
                          std::string("say your weight, the block's two sides, how far it sinks"));
                    return write_squash(edit, parts);
                  }});
}

void add_obstacles(const Walk& walk, std::vector<Question>& to) {
  for (int wall = 0; wall < static_cast<int>(walk.spots.size()); ++wall) {
    const std::string& name = walk.survey.walls[wall].name;
    to.push_back({"obstacle " + name,
                  "Outlet, switch, vent, heater, casing, sill or pipe on the " + name +
                      " wall: which, along from, to, height from, to, how far out? (skip: no more)",
                  like(walk.survey.units, "outlet 40, 42 3/4, 12, 16 1/2, 1/4",
                       "outlet 1020, 1090, 300, 420, 6"),
                  kBoxSketch, true, [wall](TextEdit& edit, const Answers& answers) {
                    return write_box(edit, wall, answers.back().text);
                  }});
  }
}

TextEdit::Done write_turn(TextEdit& edit, const std::vector<std::string>& parts) {
  return add_to(edit, "access", "turns",
                "{ name = " + quoted(parts[0]) + ", from = " + quoted(parts[1]) +
                    ", to = " + quoted(parts[2]) + ", height = " + quoted(parts[3]) + " }");
}

void add_turns(const Walk& walk, std::vector<Question>& to) {
  to.push_back({"turn",
                "A turn of a hall or stair on the way in: its name, width before, width after, "
                "height? (skip: no more)",
                like(walk.survey.units, "hall, 36, 38, 95", "hall, 915, 965, 2410"), kTurnSketch,
                true, [](TextEdit& edit, const Answers& answers) -> Done {
                  const Parts parts = parts_of(answers.back().text);
                  if (parts.size() != 4)
                    return tl::unexpected(
                        std::string("say its name, both widths and its height, with commas"));
                  return write_turn(edit, parts);
                }});
}

void add_doors(const Walk& walk, std::vector<Question>& to) {
  to.push_back({"door", "A door on the way in: its name, clear width, height? (skip: no more)",
                like(walk.survey.units, "bedroom door, 29 3/4, 79 1/2", "bedroom door, 756, 2019"),
                kDoorSketch, true, [](TextEdit& edit, const Answers& answers) {
                  return write_door(edit, answers.back().text);
                }});
}

}  // namespace nook
