// Where a baseboard runs decides whether a low reading has to say what it was taken on.
#include <catch2/catch.hpp>

#include "base/diagnostic.h"
#include "job/job.h"

using namespace nook;

namespace {

// The back wall of an alcove: board 100 mm high from 200 to 600 mm from its left corner; one
// plumb line with one reading 50 mm up, `at` from a corner.
std::string back_wall(const std::string& length, int at, const std::string& from_corner,
                      const std::string& reading = "'32'") {
  return "units = 'mm'\n[[wall]]\nname = 'left'\n[[wall]]\nname = 'back'\n" + length +
         "baseboard = { height = 100, thickness = 12, starts = 200, ends = 600 }\n"
         "[[wall.plumb]]\nat = " +
         std::to_string(at) + "\nfrom_corner = '" + from_corner + "'\nline = [[50, " + reading +
         "], [1500, 30]]\n[[wall]]\nname = 'right'\n";
}

std::string code(const std::string& text) {
  const auto read = parse_room(text, "room.toml");
  return read ? "" : read.error().at(0).code;
}

const std::string kLong = "length = 1204\n";

}  // namespace

TEST_CASE("board: from its start to its end a low reading must say so, beside it need not") {
  CHECK(code(back_wall(kLong, 199, "left")).empty());
  CHECK(code(back_wall(kLong, 200, "left")) == "on-baseboard");
  CHECK(code(back_wall(kLong, 600, "left")) == "on-baseboard");
  CHECK(code(back_wall(kLong, 601, "left")).empty());
}

TEST_CASE("board: counted from the other corner it runs from 604 to 1004 of 1204") {
  CHECK(code(back_wall(kLong, 603, "right")).empty());
  CHECK(code(back_wall(kLong, 604, "right")) == "on-baseboard");
  CHECK(code(back_wall(kLong, 1004, "right")) == "on-baseboard");
  CHECK(code(back_wall(kLong, 1005, "right")).empty());
}

TEST_CASE("board: on a wall that counts from its right corner the board does so too") {
  const std::string counts = kLong + "from_corner = 'right'\n";
  CHECK(code(back_wall(counts, 199, "right")).empty());
  CHECK(code(back_wall(counts, 200, "right")) == "on-baseboard");
  CHECK(code(back_wall(counts, 603, "left")).empty());
  CHECK(code(back_wall(counts, 1004, "left")) == "on-baseboard");
}

TEST_CASE("board: from the other corner of a wall of no known length nothing is refused") {
  CHECK(code(back_wall("", 700, "right")).empty());
  CHECK(code(back_wall("", 400, "left")) == "on-baseboard");
}

TEST_CASE("board: a reading on the board where there is none is refused") {
  const std::string on_board = "{ is = '32', on = 'baseboard' }";
  CHECK(code(back_wall(kLong, 300, "left", on_board)).empty());
  CHECK(code(back_wall(kLong, 700, "left", on_board)) == "no-baseboard");
  CHECK(code(back_wall(kLong, 300, "right", on_board)) == "no-baseboard");
}
