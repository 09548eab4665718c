// What one looks for and lists: studs, obstacles, doors.
#include "job/walk_part.h"
#include "job/walk_sketch.h"

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

tl::expected<std::string, std::string> stud_of(const std::string& answer,
                                               const std::string& height) {
  const Found found = found_in(answer);
  if (found.numbers.empty() || found.numbers.size() > 2)
    return tl::unexpected(std::string("say both edges with a comma between, or the center"));
  const std::string where = found.numbers.size() == 1 ? "centre = " + quoted(found.numbers[0])
                                                      : "edges = [" + quoted(found.numbers[0]) +
                                                            ", " + quoted(found.numbers[1]) + "]";
  return "{ " + where + ", height = " + quoted(height) + ", by = " + quoted(found.by) + " }";
}

Done write_stud(TextEdit& edit, int wall, bool first, const std::string& item) {
  const std::string path = "wall[" + std::to_string(wall) + "].studs";
  if (!first) return edit.append(key_path(path + ".found"), item);
  return edit.set(key_path(path), "{ kind = 'wood', found = [" + item + "] }");
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

}  // namespace

void add_studs(const Walk& walk, std::vector<Question>& to) {
  const bool inch = walk.survey.units == Unit::inch;
  for (int wall = 0; wall < static_cast<int>(walk.spots.size()); ++wall) {
    const Wall& entry = walk.survey.walls[wall];
    const bool first = !entry.studs;
    const std::string height = easy(walk.survey, walk.spots[wall].height);
    const std::size_t known = entry.studs ? entry.studs->found.size() : 0;
    to.push_back({"stud " + entry.name,
                  "Studs of the " + entry.name + " wall, " + height + " up, " +
                      std::to_string(known) +
                      " found so far. The next: both edges or its center, and found by what? "
                      "(skip: no more)",
                  inch ? "14 9/16, 16 1/16 nail" : "370, 408 nail", kStudSketch, true,
                  [=](TextEdit& edit, const Answers& answers) -> Done {
                    const auto item = stud_of(answers.back().text, height);
                    if (!item) return tl::unexpected(item.error());
                    return write_stud(edit, wall, first, *item);
                  }});
  }
}

void add_obstacles(const Walk& walk, std::vector<Question>& to) {
  const bool inch = walk.survey.units == Unit::inch;
  for (int wall = 0; wall < static_cast<int>(walk.spots.size()); ++wall) {
    const std::string& name = walk.survey.walls[wall].name;
    to.push_back({"obstacle " + name,
                  "Outlet, switch, vent, heater, casing, sill or pipe on the " + name +
                      " wall: which, along from, to, height from, to, how far out? (skip: no more)",
                  inch ? "outlet 40, 42 3/4, 12, 16 1/2, 1/4" : "outlet 1020, 1090, 300, 420, 6",
                  kBoxSketch, true, [wall](TextEdit& edit, const Answers& answers) {
                    return write_box(edit, wall, answers.back().text);
                  }});
  }
}

void add_doors(const Walk& walk, std::vector<Question>& to) {
  const bool inch = walk.survey.units == Unit::inch;
  to.push_back({"door", "A door on the way in: its name, clear width, height? (skip: no more)",
                inch ? "bedroom door, 29 3/4, 79 1/2" : "bedroom door, 756, 2019", kDoorSketch,
                true, [](TextEdit& edit, const Answers& answers) {
                  return write_door(edit, answers.back().text);
                }});
}

}  // namespace nook
