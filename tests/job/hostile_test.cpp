// Huge, deep and broken files end in an answer or a clear fault.
#include <catch2/catch.hpp>
#include <random>

#include "base/diagnostic.h"
#include "job/job.h"
#include "job/node.h"
#include "job/samples.h"

using namespace nook;

namespace {

std::string repeated(int count, const std::string& text) {
  std::string all;
  for (int i = 0; i < count; ++i) all += text;
  return all;
}

std::string code_of(const std::string& text) {
  const auto read = parse_room(text, "f");
  return read ? "" : read.error().front().code;
}

}  // namespace

TEST_CASE("hostile: a hundred thousand levels are refused, however they are written") {
  const int deep = 100'000;
  CHECK(code_of("[a" + repeated(deep, ".a") + "]\n") == "nested-too-deep");
  CHECK(code_of("a" + repeated(deep, ".a") + " = 1\n") == "nested-too-deep");
  CHECK(code_of("a = " + repeated(deep, "[") + "\n") == "nested-too-deep");
  CHECK(code_of("a = " + repeated(deep, "{ a = ") + "\n") == "nested-too-deep");
}

TEST_CASE("hostile: dots in texts and remarks are no keys") {
  CHECK(code_of("# " + repeated(50, ".") + "\ntitle = '" + repeated(50, ".") + "'\n").empty());
  CHECK(code_of("title = '''\n" + repeated(50, ".") + "'''\n").empty());
}

TEST_CASE("hostile: a hundred thousand readings are refused as a whole, once read") {
  const std::string text = "[[wall]]\nname = 'a'\n[[wall.plumb]]\nat = '24'\nline = [" +
                           repeated(100'000, "['8', '2 1/16'],\n") + "]\n";
  const auto read = parse_room(text, "f");
  REQUIRE_FALSE(read);
  REQUIRE(read.error().size() == 1);
  CHECK(message(read.error()[0], text) ==
        "f: error: 100000 readings are more than 6000 [too-many-readings]\n"
        "help: keep the ones that matter for the pieces; of a scan a few hundred do\n");
}

TEST_CASE("hostile: a hundred thousand faults are cut off, and say so") {
  const auto read =
      parse_room("[[wall]]\nname = 'a'\nlength = [" + repeated(100'000, "'1 x',") + "]\n", "f");
  REQUIRE_FALSE(read);
  CHECK(read.error().size() == 501);
  CHECK(read.error().front().code == "too-many-faults");
}

TEST_CASE("hostile: a typed name of a megabyte does not fill the screen") {
  const std::string text = std::string(1'000'000, 'k') + " = 1\n";
  const auto read = parse_room(text, "f");
  REQUIRE_FALSE(read);
  CHECK(message(read.error()[0], text).size() < 1500);
}

TEST_CASE("hostile: six thousand readings are read") {
  const std::string text = "[[wall]]\nname = 'a'\n[[wall.plumb]]\nat = '24'\nline = [" +
                           repeated(6'000, "['8', '2 1/16'],\n") + "]\n";
  const auto read = parse_room(text, "f");
  REQUIRE(read);
  CHECK(read->walls[0].plumbs[0].line.back().reading[0].id == "wall[0].plumb[0].line[5999]");
}

TEST_CASE("hostile: ten thousand marks and spans are refused as a whole, once read") {
  std::string text = "[[wall]]\nname = 'a'\n[[wall]]\nname = 'b'\n";
  for (int i = 0; i < 10'000; ++i) text += "[[mark]]\nname = 'm" + std::to_string(i) + "'\n";
  for (int i = 0; i < 9'999; ++i)
    text += "[[span]]\nbetween = ['m" + std::to_string(i) + "', 'm" + std::to_string(i + 1) +
            "']\nis = '40'\n";
  const auto read = parse_room(text, "f");
  REQUIRE_FALSE(read);
  CHECK(read.error().size() == 2);
  CHECK(read.error()[0].code == "too-many-marks");
  CHECK(read.error()[1].code == "too-many-readings");
}

TEST_CASE("hostile: bytes changed at random end in an answer or in faults with their lines",
          "[property]") {
  const unsigned seed = 4711;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  const std::string signs = "'\"[]{}=,.#\n\\0123456789 -+/xe\xC3\xFF";
  int refused = 0;
  for (int round = 0; round < 2000; ++round) {
    std::string text = round % 2 ? kRoom : kDesign;
    for (int k = 0; k < 3; ++k) text[random() % text.size()] = signs[random() % signs.size()];
    const auto room = parse_room(text, "f");
    const auto design = parse_design(text, "f");
    const Diagnostics faults = round % 2 ? (room ? Diagnostics{} : room.error())
                                         : (design ? Diagnostics{} : design.error());
    refused += !faults.empty();
    for (const Diagnostic& fault : faults) {
      const int lines = static_cast<int>(std::count(text.begin(), text.end(), '\n')) + 1;
      const bool there =
          fault.place.line >= 0 && fault.place.line <= lines && fault.place.width > 0;
      if (!there || message(fault, text).empty()) FAIL(fault.what);
    }
  }
  CHECK(refused > 1000);
}

TEST_CASE("hostile: angles are readings like any other") {
  std::string angles;
  for (int i = 0; i < 6001; ++i) angles += "{ is = 91, sd = 1 },";
  const auto read = parse_room(
      "[[wall]]\nname = 'left'\n[[wall]]\nname = 'right'\n[[corner]]\nwalls = ['left', 'right']\n"
      "angles = [" +
          angles + "]\n",
      "f");
  REQUIRE_FALSE(read);
  CHECK(read.error().front().code == "too-many-readings");
}
