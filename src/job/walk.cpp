// First questions of a new file, and the order of the others.
#include "job/walk.h"

#include <algorithm>
#include <sstream>

#include "job/node.h"
#include "job/walk_part.h"

namespace nook {
namespace {

using Done = TextEdit::Done;

Done refused(const std::string& why) {
  return tl::unexpected(why);
}

Done write_units(TextEdit& edit, const Answers& answers) {
  const std::string& unit = answers.back().text;
  if (unit != "inch" && unit != "mm" && unit != "cm") return refused("say inch, mm or cm");
  return edit.set(key_path("units"), quoted(unit));
}

Done write_walls(TextEdit& edit, const Answers& answers) {
  const std::vector<std::string> names = parts_of(answers.back().text);
  if (names.size() < 2) return refused("name two walls or three, from left to right");
  Done done;
  for (const std::string& name : names)
    if (done) done = edit.append_table(key_path("wall"), "name = " + quoted(name) + "\n");
  for (std::size_t k = 0; done && k + 1 < names.size(); ++k)
    done = edit.append_table(key_path("corner"),
                             "walls = [" + quoted(names[k]) + ", " + quoted(names[k + 1]) + "]\n");
  return done;
}

Done write_tape(TextEdit& edit, const Answers& answers) {
  return set_in(edit, "tape", "corner", quoted(answers.back().text));
}

}  // namespace

TextEdit::Done set_in(TextEdit& edit, const std::string& table, const std::string& key,
                      const std::string& value) {
  const KeyPath path = key_path(table + "." + key);
  const Done made = edit.set(path, value);
  if (made) return made;
  TextEdit longer(edit.text() + "\n[" + table + "]\n");
  const Done added = longer.set(path, value);
  if (added) edit = longer;
  return added;
}

TextEdit::Done add_to(TextEdit& edit, const std::string& table, const std::string& list,
                      const std::string& item) {
  const Done added = edit.append(key_path(table + "." + list), item);
  return added ? added : set_in(edit, table, list, "[" + item + "]");
}

std::vector<std::string> parts_of(const std::string& answer) {
  std::vector<std::string> parts;
  std::stringstream stream(answer);
  for (std::string part; std::getline(stream, part, ',');) {
    const auto from = part.find_first_not_of(' ');
    if (from != std::string::npos)
      parts.push_back(part.substr(from, part.find_last_not_of(' ') - from + 1));
  }
  return parts;
}

std::vector<Question> first_questions(const std::string& text, const Design* design) {
  const auto tree = parse_tree(text, "");
  std::vector<Question> questions;
  if (!tree) return questions;
  const auto lacks = [&](const char* key) { return !tree->find(key); };
  if (lacks("units"))
    questions.push_back({"units", "In which unit do you read the tape: inch, mm or cm?", "inch",
                         "\n  Readings may still be typed in any unit.\n", false, write_units});
  if (lacks("tape"))
    questions.push_back(
        {"tape", "How is the tape's end set in a corner: bent, case, block or burned?", "block",
         "\n  block: a block of known length in the corner, added on: the best.\n"
         "  case: the length of the tape's case added on. burned: held at a mark.\n"
         "  bent: the tape bent into the corner and read at the bend: good to 1/16 in.\n",
         false, write_tape});
  if (lacks("wall"))
    questions.push_back({"walls", "Names of the walls, from left to right as you face the corner?",
                         design ? design->corner[0] + ", " + design->corner[1] : "left, right",
                         "\n  Two make a corner, three an alcove.\n", false, write_walls});
  return questions;
}

std::vector<Question> open_questions(const Survey& survey, const Design* design) {
  std::vector<Question> questions;
  const Walk walk{survey, design, spots_of(survey, design)};
  add_lengths(walk, questions);
  add_floor(walk, questions);
  add_ceiling(walk, questions);
  add_covering(walk, questions);
  add_corners(walk, questions);
  add_across(walk, questions);
  add_levels(walk, questions);
  add_strings(walk, questions);
  add_studs(walk, questions);
  add_obstacles(walk, questions);
  add_doors(walk, questions);
  add_turns(walk, questions);
  questions.push_back(more_question(survey));
  return questions;
}

}  // namespace nook
