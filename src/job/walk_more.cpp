// Readings that the walk does not ask for by itself, each typed as one line at any question.
#include <algorithm>
#include <array>
#include <map>

#include "job/walk_part.h"
#include "room/survey.h"

namespace nook {
namespace {

using Done = TextEdit::Done;
using Parts = std::vector<std::string>;

// What stands after the word: its fields, with commas between.
struct Line {
  TextEdit& edit;
  const Survey& survey;
  Parts parts;

  std::string value(std::size_t i) const { return quoted(parts[i]); }
  // All fields from `i` on, in pairs: "[['8', '2 1/16'], ...]".
  std::string pairs(std::size_t i) const {
    std::string text;
    for (; i + 1 < parts.size(); i += 2)
      text += (text.empty() ? "[" : ", [") + value(i) + ", " + reading(parts[i + 1]) + "]";
    return "[" + text + "]";
  }
};

struct Form {
  const char* word;
  const char* fields;  // as a person is told
  std::size_t least, most;
  Done (*write)(Line&);
};

Done refused(const std::string& why) {
  return tl::unexpected(why);
}

std::optional<int> wall_of(const Line& line) {
  const auto& walls = line.survey.walls;
  for (std::size_t i = 0; i < walls.size(); ++i)
    if (walls[i].name == line.parts[0]) return static_cast<int>(i);
  return {};
}

Done on_wall(Line& line, const std::string& list, const std::string& keys) {
  const auto wall = wall_of(line);
  if (!wall) return refused("there is no wall '" + line.parts[0] + "'");
  return line.edit.append_table(key_path("wall[" + std::to_string(*wall) + "]." + list), keys);
}

Done write_level(Line& line) {
  const auto ended = ended_gap(line.parts[4], "top", "bottom");
  if (!ended) return tl::unexpected(ended.error());
  return on_wall(line, "level",
                 "at = " + line.value(1) + "\nfrom = " + line.value(2) + "\nto = " + line.value(3) +
                     "\ngap = " + quoted(ended->gap) + "\ngap_at = " + quoted(ended->end) + "\n");
}
Done write_plumb(Line& line) {
  return on_wall(line, "plumb", "at = " + line.value(1) + "\nline = " + line.pairs(2) + "\n");
}
Done write_string(Line& line) {
  return on_wall(line, "string", "height = " + line.value(1) + "\nline = " + line.pairs(2) + "\n");
}
Done write_straightedge(Line& line) {
  return on_wall(line, "straightedge",
                 "height = " + line.value(1) + "\ngaps = " + line.pairs(2) + "\n");
}

// A further entry of the corner, at its own height.
Done in_corner(Line& line, const std::string& key) {
  const auto slash = line.parts[0].find('/');
  if (slash == std::string::npos) return refused("say the corner by its walls, like left/right");
  return line.edit.append_table(key_path("corner"),
                                "walls = [" + quoted(line.parts[0].substr(0, slash)) + ", " +
                                    quoted(line.parts[0].substr(slash + 1)) +
                                    "]\nheight = " + line.value(1) + "\n" + key + "\n");
}
Done write_diagonal(Line& line) {
  return in_corner(
      line, "diagonals = [[" + line.value(2) + ", " + line.value(3) + ", " + line.value(4) + "]]");
}
Done write_square(Line& line) {
  const auto ended = ended_gap(line.parts[3], "tip", "heel");
  if (!ended) return tl::unexpected(ended.error());
  return in_corner(line, "square = [{ blade = " + line.value(2) + ", gap = " + quoted(ended->gap) +
                             ", at = " + quoted(ended->end) + " }]");
}
Done write_angle(Line& line) {
  return in_corner(line,
                   "angles = [{ is = " + line.value(3) + ", blade = " + line.value(2) + " }]");
}

Done write_across(Line& line) {
  return line.edit.append_table(key_path("across"),
                                "walls = [" + line.value(0) + ", " + line.value(1) +
                                    "]\nout = " + line.value(2) + "\nheight = " + line.value(3) +
                                    "\nis = " + line.value(4) + "\n");
}

// "right wall 60" is a point along a wall; a corner is called after its walls; the rest are marks.
Done write_end(Line& line, const std::string& name, std::string& end) {
  const auto at = name.find(" wall ");
  if (at != std::string::npos) {
    end = "{ wall = " + quoted(name.substr(0, at)) + ", along = " + quoted(name.substr(at + 6)) +
          " }";
    return {};
  }
  end = quoted(name);
  const auto& marks = line.survey.marks;
  const bool known = std::find(marks.begin(), marks.end(), name) != marks.end();
  if (known || name.find('/') != std::string::npos) return {};
  return line.edit.append_table(key_path("mark"), "name = " + end + "\n");
}
Done write_tape(Line& line) {
  std::array<std::string, 2> ends;
  for (const std::size_t i : {0, 1})
    if (const Done done = write_end(line, line.parts[i], ends[i]); !done) return done;
  return line.edit.append_table(key_path("span"), "between = [" + ends[0] + ", " + ends[1] +
                                                      "]\nis = " + line.value(2) + "\n");
}

Done write_ceiling(Line& line) {
  return add_to(line.edit, "ceiling", "up",
                "[" + line.value(0) + ", " + line.value(1) + ", " + line.value(2) + ", " +
                    line.value(3) + "]");
}
Done write_down(Line& line) {
  return add_to(line.edit, "floor", "down",
                "[" + line.value(0) + ", " + line.value(1) + ", " + line.value(2) + ", " +
                    line.value(3) + "]");
}
Done write_covering(Line& line) {
  return nook::write_covering(line.edit, line.parts);
}
Done write_squash(Line& line) {
  return nook::write_squash(line.edit, line.parts);
}
Done write_turn(Line& line) {
  return nook::write_turn(line.edit, line.parts);
}
Done write_blocking(Line& line) {
  const auto wall = wall_of(line);
  if (!wall) return refused("there is no wall '" + line.parts[0] + "'");
  const auto& studs = line.survey.walls[static_cast<std::size_t>(*wall)].studs;
  if (!studs) return refused("find a stud of that wall first");
  const std::string path = "wall[" + std::to_string(*wall) + "].studs.blocking";
  const std::string item = "{ along = [" + line.value(1) + ", " + line.value(2) + "], height = [" +
                           line.value(3) + ", " + line.value(4) + "] }";
  if (!studs->blocking.empty()) return line.edit.append(key_path(path), item);
  return line.edit.set(key_path(path), "[" + item + "]");
}

constexpr std::size_t kAny = 1000;
constexpr Form kForms[] = {
    {"level", "WALL, AT, FROM, TO, GAP top|bottom", 5, 5, write_level},
    {"plumb", "WALL, AT, HEIGHT, LINE TO WALL, HEIGHT, LINE ...", 4, kAny, write_plumb},
    {"string", "WALL, HEIGHT, AT, LINE TO WALL, AT, LINE ...", 4, kAny, write_string},
    {"straightedge", "WALL, HEIGHT, AT, GAP, AT, GAP ...", 4, kAny, write_straightedge},
    {"diagonal", "WALL/WALL, HEIGHT, MARK, MARK, STRAIGHT", 5, 5, write_diagonal},
    {"square", "WALL/WALL, HEIGHT, BLADE, GAP tip|heel", 4, 4, write_square},
    {"angle", "WALL/WALL, HEIGHT, BLADE, DEGREES", 4, 4, write_angle},
    {"across", "WALL, WALL, OUT FROM THE ONE BETWEEN, HEIGHT, WALL TO WALL", 5, 5, write_across},
    {"tape", "MARK, MARK, STRAIGHT (left/right is a corner, right wall 60 a spot)", 3, 3,
     write_tape},
    {"down", "WALL, ALONG, OUT, DOWN FROM THE LINE", 4, 4, write_down},
    {"ceiling", "WALL, ALONG, OUT, UP FROM THE LINE", 4, 4, write_ceiling},
    {"covering", "KIND, THICKNESS", 2, 2, write_covering},
    {"squash", "WEIGHT, BLOCK LONG, BLOCK WIDE, SINKS BY", 4, 4, write_squash},
    {"blocking", "WALL, FROM, TO, LOW, HIGH", 5, 5, write_blocking},
    {"turn", "NAME, WIDTH BEFORE, WIDTH AFTER, HEIGHT", 4, 4, write_turn},
};

const Form* form_of(const std::string& answer) {
  const std::string word = answer.substr(0, answer.find(' '));
  const auto found = std::find_if(std::begin(kForms), std::end(kForms),
                                  [&](const Form& form) { return word == form.word; });
  return found == std::end(kForms) ? nullptr : &*found;
}

Done write(TextEdit& edit, const Survey& survey, const std::string& answer) {
  const Form* form = form_of(answer);
  if (!form) return refused("say one of those that ? lists");
  const auto space = answer.find(' ');
  Line line{edit, survey, space == std::string::npos ? Parts{} : parts_of(answer.substr(space))};
  const bool odd = form->most == kAny && line.parts.size() % 2 != 0;
  if (line.parts.size() < form->least || line.parts.size() > form->most || odd)
    return refused(std::string("say ") + form->word + " " + form->fields);
  return form->write(line);
}

std::string forms_text() {
  std::string text = "\n";
  for (const Form& form : kForms) text += std::string("  ") + form.word + " " + form.fields + "\n";
  return text;
}

}  // namespace

Question more_question(const Survey& survey) {
  return {"more",
          "Anything more: plumb, straightedge, square, angle, across, tape, down, ceiling, "
          "covering, squash, blocking, turn? (? lists how to type them, at any question; skip: no)",
          like(survey.units, "plumb left, 24, 8, 2 1/16, 48, 2 1/4",
               "plumb left, 600, 200, 52, 1200, 57"),
          forms_text(),
          true,
          [survey](TextEdit& edit, const Answers& answers) {
            return write(edit, survey, answers.back().text);
          }};
}

bool is_more(const std::string& answer) {
  return answer.find(' ') != std::string::npos && form_of(answer);
}

}  // namespace nook
