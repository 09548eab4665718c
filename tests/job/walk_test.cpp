// What the walk through a room still asks, and what it writes.
#include <algorithm>
#include <catch2/catch.hpp>

#include "job/job.h"
#include "job/walk.h"
#include "samples.h"

using namespace nook;

namespace {

Survey room(const std::string& text) {
  const auto read = parse_room(text, "room.toml");
  REQUIRE(read);
  return *read;
}

std::vector<Question> asked(const std::string& text, const Design* design = nullptr) {
  return open_questions(room(text), design);
}

const Question* question(const std::vector<Question>& all, const std::string& id) {
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Question& q) { return q.id == id; });
  return found == all.end() ? nullptr : &*found;
}

// The file once a question is answered.
std::string answered(const std::string& text, const std::string& id, const std::string& answer) {
  const auto questions = asked(text);
  const Question* open = question(questions, id);
  REQUIRE(open);
  TextEdit edit(text);
  REQUIRE(open->write(edit, {{answer}}));
  return edit.text();
}

const std::string kWalls =
    "[[wall]]\nname = 'left'\nlength = '100'\n[[wall]]\nname = 'right'\nlength = '80'\n"
    "[[corner]]\nwalls = ['left', 'right']\n";

std::vector<std::string> ids(const std::vector<Question>& questions, const std::string& start) {
  std::vector<std::string> found;
  for (const Question& q : questions)
    if (q.id.starts_with(start)) found.push_back(q.id);
  return found;
}

}  // namespace

TEST_CASE("walk: what is struck is asked again, and stays in the file") {
  const std::string diagonal = "diagonal left/right 36 48";
  const auto with = [](const std::string& straight) {
    return kWalls + "height = '40'\ndiagonals = [['36', '48', " + straight + "]]\n";
  };
  CHECK(question(asked(kWalls), diagonal));
  CHECK_FALSE(question(asked(with("'60'")), diagonal));
  CHECK(question(asked(with("{ is = '66', struck = true }")), diagonal));
  CHECK_FALSE(question(asked(with("['60', { is = '66', struck = true }]")), diagonal));
  const std::string text = answered(with("{ is = '66', struck = true }"), diagonal, "60 1/8");
  CHECK(room(text).corners[0].diagonals.size() == 2);
  CHECK_FALSE(question(asked(text), diagonal));
}

TEST_CASE(
    "walk: a wall whose only length is struck is measured again, and no figure of it is used") {
  const std::string struck =
      "[[wall]]\nname = 'left'\nlength = { is = '10', sd = '1/8', struck = true, note = 'odd' }\n"
      "[[wall]]\nname = 'right'\nlength = '80'\n[[corner]]\nwalls = ['left', 'right']\n";
  CHECK(question(asked(struck), "length left"));
  CHECK(question(asked(struck), "diagonal left/right 36 48"));  // 10 in would have no room for it
  const Survey survey = room(answered(struck, "length left", "100 1/4"));
  REQUIRE(survey.walls[0].length.size() == 2);
  CHECK(survey.walls[0].length[0].struck);
  CHECK(survey.walls[0].length[0].note == "odd");
  CHECK(survey.walls[0].length[0].sd->mm == Approx(25.4 / 8));
  CHECK(survey.walls[0].longest()->mm == Approx(100.25 * 25.4));
}

TEST_CASE("walk: struck heights, levels and strings are asked again") {
  const std::string text =
      "[[wall]]\nname = 'left'\nlength = '100'\nlevel = [{ at = '24', from = '8', to = '56', gap = "
      "{ is = '0', struck = true }, gap_at = 'top' }]\n"
      "string = [{ height = '39', line = [['2', { is = '1', struck = true }], ['18', '1']] }]\n"
      "[[wall]]\nname = 'right'\nlength = '80'\n"
      "[floor]\ndown = [['left', '24', '4', { is = '40', struck = true }]]\n";
  std::string taken = text;
  const std::string struck = ", struck = true";
  for (std::size_t at; (at = taken.find(struck)) != std::string::npos;)
    taken.erase(at, struck.size());
  for (const std::string start : {"floor left", "level left", "string left"}) {
    INFO(start);
    CHECK(ids(asked(text), start).size() == ids(asked(taken), start).size() + 1);
  }
}

TEST_CASE("walk: studs are looked for where something is screwed on, at its own height") {
  const auto design = parse_design(
      "corner = ['left', 'right']\n[stock.rail]\nkind = 'lumber'\nsection = ['1', '3']\n"
      "[[part]]\nname = 'cleat'\nstock = 'rail'\nshape = { length = '40' }\n"
      "place = { at = ['41', '0', '38'], u = '-x', v = '+z' }\n"
      "repeat = { count = 2, step = ['0', '0', '14'] }\n"
      "[[part]]\nname = 'rail'\nstock = 'rail'\nshape = { length = '40' }\n"
      "place = { at = ['0', '1', '72'], u = '+y', v = '+z' }\n"
      "[[contact]]\npart = 'rail'\nface = 'back'\nmeets = 'right wall'\n"
      "[[fasten]]\npart = 'cleat'\nto = 'left wall'\nscrew = { gauge = 10, length = '3' }\n",
      "f");
  REQUIRE(design);
  const auto questions = asked(kWalls, &*design);
  CHECK(ids(questions, "stud") == std::vector<std::string>{"stud left 40", "stud left 54"});
  const auto strings = ids(questions, "string left");
  REQUIRE_FALSE(strings.empty());
  CHECK(question(questions, strings[0])->ask.find("54 up") != std::string::npos);
  CHECK(ids(asked(kWalls), "stud").size() == 2);  // of each wall without a design
}

TEST_CASE("walk: under what stands it asks for the covering, and of a soft one how far it gives") {
  const auto stands = parse_design(kDesign + "\n", "f");
  REQUIRE(stands);
  REQUIRE_FALSE(stands->feet.empty());
  CHECK(question(asked(kWalls, &*stands), "covering"));
  CHECK_FALSE(question(asked(kWalls), "covering"));
  const std::string carpet =
      kWalls + "[floor]\ncovering = { kind = 'carpet', thickness = '5/8' }\n";
  CHECK_FALSE(question(asked(carpet, &*stands), "covering"));
  CHECK(question(asked(carpet, &*stands), "squash"));
  const std::string oak = kWalls + "[floor]\ncovering = { kind = 'oak' }\n";
  CHECK_FALSE(question(asked(oak, &*stands), "squash"));
}

TEST_CASE("walk: the ceiling is asked for where something is raised under it or meets it") {
  auto design = parse_design(kDesign + "\n", "f");
  REQUIRE(design);
  for (Part& part : design->parts) part.outline = {{0, 0}, {500, 0}, {500, 900}, {0, 900}};
  CHECK(ids(asked(kWalls, &*design), "ceiling").empty());
  design->parts[0].outline = {{0, 0}, {500, 0}, {500, 2000}, {0, 2000}};
  const auto tall = ids(asked(kWalls, &*design), "ceiling");
  REQUIRE(tall.size() == 1);
  TextEdit edit(kWalls);
  REQUIRE(question(asked(kWalls, &*design), tall[0])->write(edit, {{"56 1/4"}}));
  CHECK(edit.text().find("[ceiling]\nup = [['left', ") != std::string::npos);
  CHECK(ids(asked(edit.text(), &*design), "ceiling").empty());
  Contact top;
  top.part = design->parts[0].name;
  top.meets = "ceiling";
  design->contacts.push_back(top);
  CHECK(ids(asked(kWalls, &*design), "ceiling").size() == 4);
  CHECK(ids(asked(edit.text(), &*design), "ceiling").size() == 3);
}

TEST_CASE("walk: a floor spot and a distance across are typed with their walls") {
  TextEdit edit(
      "units = 'inch'\n[[wall]]\nname = 'a'\n[[wall]]\nname = 'b'\n[[wall]]\nname = 'c'\n"
      "[[wall]]\nname = 'd'\n");
  const auto type = [&](const std::string& line) {
    CHECK(is_more(line));
    REQUIRE(more_question(room(edit.text())).write(edit, {{line}}));
  };
  type("down b, 36, 12, 40 1/8");
  type("across b, d, 12, 40, 60 1/4");
  const Survey survey = room(edit.text());
  REQUIRE(survey.floor.down.size() == 1);
  CHECK(survey.floor.down[0].wall == 1);
  CHECK(survey.floor.down[0].out.mm == Approx(12 * 25.4));
  REQUIRE(survey.across.size() == 1);
  CHECK(survey.across[0].walls[0] == 1);
  CHECK(survey.across[0].walls[1] == 3);
}

TEST_CASE("walk: with the tape held at a burned mark the example says so") {
  const std::string bare = "[[wall]]\nname = 'left'\n[[wall]]\nname = 'right'\n";
  CHECK(question(asked(bare), "length left")->like == "118 3/8");
  CHECK(question(asked("[tape]\ncorner = 'burned'\n" + bare), "length left")->like ==
        "118 3/8 burned 1");
  CHECK(question(asked("units = 'mm'\n[tape]\ncorner = 'burned'\n" + bare), "length left")->like ==
        "3007 burned 10 cm");
}

TEST_CASE("walk: turns on the way in are asked for behind the doors") {
  const auto questions = asked(kWalls);
  REQUIRE(question(questions, "turn"));
  CHECK(question(questions, "turn") > question(questions, "door"));
  const Survey survey = room(answered(kWalls, "turn", "hall, 36, 38, 95"));
  REQUIRE(survey.turns.size() == 1);
  CHECK(survey.turns[0].name == "hall");
  CHECK(survey.turns[0].to.mm == Approx(38 * 25.4));
}
