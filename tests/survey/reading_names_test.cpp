// Names of readings: each says what, where and on which line, and none is like another.
#include "survey/reading_names.h"

#include <catch2/catch.hpp>
#include <fstream>
#include <set>
#include <sstream>

#include "job/job.h"
#include "source_dir.h"
#include "survey/adjustment.h"

using namespace nook;

namespace {

Survey room_of(const std::string& job) {
  const std::string file = std::string(NOOKFIT_SOURCE_DIR) + "/rooms/" + job + "/room.toml";
  std::ifstream in(file);
  std::stringstream text;
  text << in.rdbuf();
  const auto survey = parse_room(text.str(), file);
  REQUIRE(survey);
  return *survey;
}

Survey parsed(const std::string& text) {
  const auto survey = parse_room(text, "room.toml");
  REQUIRE(survey);
  return *survey;
}

}  // namespace

TEST_CASE("reading names: every reading of the sample rooms has one of its own") {
  const std::string job = GENERATE(as<std::string>{}, "lookout", "window-bench", "corner-desk");
  const Survey survey = room_of(job);
  const auto names = reading_names(survey);
  std::set<std::string> seen;
  const Adjustment adjusted = adjust(survey);
  for (const ReadingReport& reading : adjusted.report().readings) {
    INFO(reading.id);
    REQUIRE(names.count(reading.id));
    const std::string& name = names.at(reading.id);
    CHECK(name.find('[') == std::string::npos);
    CHECK(name.find("(line " + std::to_string(reading.line) + ")") != std::string::npos);
    CHECK(seen.insert(name).second);
  }
}

TEST_CASE("reading names: in the words of the trade") {
  const Survey survey = parsed(R"(units = "inch"
[[wall]]
name = "left"
[[wall.level]]
at = '36'
from = '8'
to = '56'
gap = ['1/4', '3/16']
gap_at = "top"
[[wall.plumb]]
at = '24'
line = [['8', '2 1/16'], ['48', '2 1/4']]
[[wall]]
name = "right"
[[corner]]
walls = ["left", "right"]
height = '8'
diagonals = [['36', '48', ['60 7/8', '60 13/16', '60 7/8']]]
[floor]
down = [['left', '6', '4', '40 1/8']]
)");
  const auto names = reading_names(survey);
  CHECK(names.at("wall[0].level[0].gap[1]") ==
        "left wall, level 36\" from the corner, taken again (line 8)");
  CHECK(names.at("wall[0].plumb[0].line[1]") ==
        "left wall, plumb line 24\" from the corner, 48\" up (line 12)");
  CHECK(names.at("corner[0].diagonals[0][0]") ==
        "left/right corner, diagonal 36\" to 48\", 8\" up (line 18)");
  CHECK(names.at("corner[0].diagonals[0][2]") ==
        "left/right corner, diagonal 36\" to 48\", 8\" up, time 3 (line 18)");
  CHECK(names.at("corner[0].diagonals[0].second") ==
        "right wall, mark 48\" from the corner (line 18)");
  CHECK(names.at("floor.down[0]") ==
        "down from the line to the floor, 6\" along the left wall (line 20)");
}
