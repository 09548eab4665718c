// room.toml read whole into plain values.
#include <catch2/catch.hpp>

#include "base/diagnostic.h"
#include "job/job.h"
#include "job/samples.h"

using namespace nook;

namespace {

Survey room(const std::string& text) {
  const auto read = parse_room(text, "room.toml");
  if (!read)
    for (const Diagnostic& fault : read.error()) UNSCOPED_INFO(message(fault, text));
  REQUIRE(read);
  return *read;
}

double in(Length x) {
  return in_inches(x);
}

}  // namespace

TEST_CASE("room: tools and title") {
  const Survey survey = room(kRoom);
  CHECK(survey.title == "Back bedroom, window corner");
  CHECK(survey.units == Unit::inch);
  CHECK(survey.tape.accuracy == TapeClass::II);
  CHECK(survey.tape.corner == TapeEnd::block);
  CHECK(in(survey.level.length) == Approx(48));
  CHECK(survey.level.slope_error == Approx(0.0005));
  CHECK(survey.flatness.sd->mm == 2);
  CHECK(survey.flatness.reach->mm == 400);
}

TEST_CASE("room: a level nobody named is 48 in long, in a metric file 1200 mm") {
  CHECK(room("units = 'inch'\n").level.length == inches(48));
  CHECK(room("units = 'cm'\n").level.length == millimetres(1200));
  CHECK(room("units = 'mm'\n[level]\nlength = '600 mm'\n").level.length == millimetres(600));
}

TEST_CASE("room: a wall with each kind of reading and its id") {
  const Wall wall = room(kRoom).walls.at(0);
  CHECK(wall.name == "left");
  REQUIRE(wall.length.size() == 2);
  CHECK(wall.length[0].id == "wall[0].length[0]");
  CHECK(wall.length[1].id == "wall[0].length[1]");
  CHECK(wall.length[1].given == "118 7/16");
  CHECK(wall.ends_at == "casing");
  CHECK(in(wall.baseboard->height) == Approx(5.25));
  CHECK(in(wall.baseboard->shoe) == Approx(0.5));
  REQUIRE(wall.levels.size() == 1);
  CHECK(wall.levels[0].gap[0].id == "wall[0].level[0]");
  CHECK(wall.levels[0].gap_at_top);
  CHECK(wall.straightedges.at(0).gaps.at(1).reading[0].id == "wall[0].straightedge[0].gaps[1]");
  CHECK(in(wall.straightedges[0].gaps[1].at) == Approx(27));
  CHECK(wall.plumbs.at(0).line.at(2).reading[0].id == "wall[0].plumb[0].line[2]");
  CHECK(in(wall.plumbs[0].line[2].height.value) == Approx(90));
  CHECK(in(wall.plumbs[0].line[2].reading[0].value) == Approx(2.4375));
  CHECK(wall.strings.at(0).line.at(2).reading[0].id == "wall[0].string[0].line[2]");
  CHECK(in(wall.strings[0].line[2].at) == Approx(115));
}

TEST_CASE("room: studs, blocking and obstacles") {
  const Wall wall = room(kRoom).walls.at(0);
  const Studs& studs = *wall.studs;
  CHECK(studs.kind == StudKind::wood);
  CHECK(in(*studs.spacing) == Approx(16));
  REQUIRE(studs.found.size() == 3);
  CHECK(studs.found[0].by == FoundBy::nail);
  CHECK(in(studs.found[0].left_edge[0].value) == Approx(14.5625));
  CHECK(studs.found[0].left_edge[0].id == "wall[0].studs.found[0].edges[0]");
  CHECK(studs.found[0].right_edge[0].id == "wall[0].studs.found[0].edges[1]");
  CHECK(studs.found[2].centre[0].id == "wall[0].studs.found[2]");
  CHECK(in(studs.found[2].height->value) == Approx(8));
  CHECK(in(studs.blocking.at(0).along[1]) == Approx(31.25));
  REQUIRE(wall.obstacles.size() == 1);
  CHECK(wall.obstacles[0].kind == ObstacleKind::outlet);
  CHECK(wall.obstacles[0].name == "outlet");
  CHECK(in(wall.obstacles[0].out[1]) == Approx(0.25));
  CHECK(wall.obstacles[0].out[0].mm == 0);
}

TEST_CASE("room: a reading's own sd and note") {
  const Reading length = room(kRoom).walls.at(1).length.at(0);
  CHECK(length.id == "wall[1].length");
  CHECK(in(*length.sd) == Approx(0.125));
  CHECK(length.note == "behind the dresser");
  CHECK(length.given == "96 1/4");
  CHECK(length.place.line == 59);
  CHECK(length.place.column == 17);
  CHECK(length.place.width == 8);
}

TEST_CASE("room: heights from the level line") {
  const auto line = room(kRoom).walls.at(1).plumbs.at(0).line;
  CHECK_FALSE(line[0].height.from_line);
  CHECK(line[1].height.from_line);
  CHECK(in(line[1].height.value) == Approx(6));
  const Survey survey = room(
      "[[wall]]\nname = 'a'\n[[wall.string]]\nfrom_line = '-30'\nline = [['3', '1'], ['60', '1']]\n"
      "[wall.studs]\nfound = [{ centre = '47 1/4', from_line = '+6 1/4', by = 'finder' }]\n");
  const Height& string = survey.walls.at(0).strings.at(0).height;
  CHECK((string.from_line && in(string.value) == Approx(-30)));
  const auto& stud = survey.walls[0].studs->found.at(0).height;
  CHECK((stud && stud->from_line && in(stud->value) == Approx(6.25)));
}

TEST_CASE("room: a corner's diagonals, marks shared by spot, struck ones counted") {
  const Corner corner = room(kRoom).corners.at(0);
  REQUIRE(corner.diagonals.size() == 3);
  CHECK(corner.diagonals[0].straight[0].id == "corner[0].diagonals[0]");
  CHECK(corner.diagonals[1].straight[1].id == "corner[0].diagonals[1][1]");
  CHECK(corner.diagonals[2].straight[0].id == "corner[0].diagonals[2]");
  CHECK(corner.diagonals[2].straight[0].struck);
  CHECK(corner.diagonals[0].first.id == "corner[0].diagonals[0].first");
  CHECK(corner.diagonals[0].second.id == "corner[0].diagonals[0].second");
  CHECK(corner.diagonals[1].first.id == "corner[0].diagonals[1].first");
  CHECK(corner.diagonals[2].first.id == "corner[0].diagonals[0].first");
  CHECK(corner.diagonals[2].second.id == "corner[0].diagonals[1].second");
  CHECK(corner.squares.at(0).gap[0].id == "corner[0].square[0]");
  CHECK(corner.squares[0].gap_at_tip);
  CHECK(corner.angles.at(0).id == "corner[0].angles[0]");
  CHECK(in_degrees(corner.angles[0].value) == Approx(91.3));
  CHECK(in(corner.buildup->reach) == Approx(6));
}

TEST_CASE("room: marks and spans") {
  const Survey survey = room(kRoom);
  CHECK(survey.marks == std::vector<std::string>{"nail in the sill"});
  REQUIRE(survey.spans.size() == 2);
  CHECK(survey.spans[0].between[0].mark == "left/right");
  CHECK(survey.spans[0].is[0].id == "span[0]");
  CHECK(survey.spans[1].is[1].id == "span[1].is[1]");
  CHECK(survey.spans[1].between[1].wall == 1);
  CHECK(in(survey.spans[1].between[1].along.value) == Approx(60));
}

TEST_CASE("room: floor, ceiling, what is installed, the way in") {
  const Survey survey = room(kRoom);
  CHECK(survey.floor.down.at(1).drop[0].id == "floor.down[1]");
  CHECK(in(survey.floor.down[1].out) == Approx(40));
  CHECK(survey.floor.covering->kind == "carpet");
  CHECK(survey.floor.squash.at(0).load_n == Approx(800.68).epsilon(1e-4));
  CHECK(survey.ceiling.at(0).drop[0].id == "ceiling.up[0]");
  CHECK(survey.installed.at(0).openings.at(0).between[1] == "front panel");
  CHECK(in(survey.doorways.at(0).width) == Approx(29.75));
  CHECK(in(survey.turns.at(0).to) == Approx(38));
}

TEST_CASE("room: an alcove, corners in file order, the default corner to count from") {
  const Survey survey = room(kAlcove);
  REQUIRE(survey.corners.size() == 2);
  CHECK(survey.walls[1].plumbs[0].from_right);
  CHECK_FALSE(survey.walls[1].plumbs[1].from_right);
  const Corner &first = survey.corners[0], &second = survey.corners[1];
  REQUIRE(first.diagonals.size() == 3);
  CHECK(first.height.value.mm == 1000);
  CHECK(first.diagonals[1].height.value.mm == 1200);
  CHECK(first.diagonals[1].straight[0].id == "corner[2].diagonals[0]");
  CHECK(first.diagonals[1].first.id == "corner[2].diagonals[0].first");
  CHECK(first.diagonals[2].first.id == "corner[2].diagonals[0].first");
  // Named right wall first: its mark is the second of the corner.
  REQUIRE(second.diagonals.size() == 1);
  CHECK(second.diagonals[0].first.value.mm == 800);
  CHECK(second.diagonals[0].second.value.mm == 600);
  CHECK(survey.across.at(0).is[0].id == "across[0]");
  CHECK(survey.across[0].walls[1] == 2);
}

TEST_CASE("room: numbers of TOML are readings in the file's units") {
  const Survey survey = room("units = 'cm'\n[[wall]]\nname = 'a'\nlength = [104.2, 104]\n");
  CHECK(survey.walls[0].length[0].value.mm == Approx(1042));
  CHECK(survey.walls[0].length[0].given == "104.2");
  CHECK(survey.walls[0].length[1].value.mm == 1040);
}

TEST_CASE("room: an empty file is a room of which nothing is known") {
  const Survey survey = room("");
  CHECK(survey.walls.empty());
  CHECK(survey.units == Unit::inch);
  CHECK(in(survey.tape.read_to) == Approx(1.0 / 16));
  CHECK(room("units = 'mm'").tape.read_to.mm == 1);
}

TEST_CASE("room: a byte order mark and CRLF change nothing but the places' bytes") {
  std::string text = "\xEF\xBB\xBF";
  for (const char c : std::string(kRoom)) text += c == '\n' ? "\r\n" : std::string(1, c);
  const Survey survey = room(text);
  CHECK(survey.walls.at(1).length.at(0).place == room(kRoom).walls.at(1).length.at(0).place);
  CHECK(survey.walls[1].length[0].value == room(kRoom).walls[1].length[0].value);
}
