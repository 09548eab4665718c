// The message of a fault, whole.
#include "base/diagnostic.h"

#include <catch2/catch.hpp>

using namespace nook;

TEST_CASE("message: the line as typed, a caret as wide as the fault, and what to do") {
  const Diagnostic fault{"room.toml", {2, 8, 5}, "'stong' is no remark", "unknown-unit", "strong?"};
  CHECK(message(fault, "a = 1\nb = '41 stong'\n") ==
        "room.toml:2:8: error: 'stong' is no remark [unknown-unit]\n"
        "    2 | b = '41 stong'\n"
        "      |        ^^^^^\n"
        "help: strong?\n");
}

TEST_CASE("message: a fault of the whole file has no line, and help may be missing") {
  CHECK(message({"room.toml", {}, "there is no such file", "no-file", ""}, "") ==
        "room.toml: error: there is no such file [no-file]\n");
}

TEST_CASE("message: tabs stay tabs, and wide and combined letters keep the caret in line") {
  const std::string text = "\tname = 'a'\r\n漢e\u0301 = x\n";
  CHECK(message({"f", {1, 9, 3}, "w", "c", ""}, text) ==
        "f:1:9: error: w [c]\n    1 | \tname = 'a'\n      | \t       ^^^\n");
  CHECK(message({"f", {2, 7, 1}, "w", "c", ""}, text) ==
        "f:2:7: error: w [c]\n    2 | 漢e\u0301 = x\n      |       ^\n");
}

TEST_CASE("message: a byte order mark is no column") {
  CHECK(message({"f", {1, 1, 1}, "w", "c", ""},
                "\xEF\xBB\xBF"
                "a = 1") == "f:1:1: error: w [c]\n    1 | a = 1\n      | ^\n");
}

TEST_CASE("message: a huge line is shown around the fault") {
  const std::string text = std::string(500, 'a') + "X" + std::string(500, 'b');
  const std::string said = message({"f", {1, 501, 1}, "w", "c", ""}, text);
  CHECK(said == "f:1:501: error: w [c]\n    1 | ..." + std::string(40, 'a') + "X" +
                    std::string(59, 'b') + "...\n      | " + std::string(43, ' ') + "^\n");
  const std::string wide = message({"f", {1, 501, 400}, "w", "c", ""}, text);
  CHECK(wide.find(std::string(61, '^')) == std::string::npos);
  CHECK(wide.find(std::string(60, '^')) != std::string::npos);
}

TEST_CASE("message: what a terminal would obey is shown as a question mark") {
  const std::string said = message({"f", {1, 1, 1}, "bad \x1b[31m name", "c", ""}, "\x1b[2J\xff\n");
  CHECK(said == "f:1:1: error: bad ?[31m name [c]\n    1 | ?[2J?\n      | ^\n");
}

TEST_CASE("message: a place outside the text still makes a message") {
  CHECK(message({"f", {9, 9, 9}, "w", "c", ""}, "a\n") ==
        "f:9:9: error: w [c]\n    9 | \n      | ^\n");
}

TEST_CASE("sort: by file and place, repeats dropped") {
  Diagnostics faults = {{"b", {1, 1, 1}, "x", "c", ""},
                        {"a", {2, 1, 1}, "x", "c", ""},
                        {"a", {1, 5, 1}, "x", "c", ""},
                        {"a", {1, 5, 1}, "x", "c", ""}};
  sort(faults);
  REQUIRE(faults.size() == 3);
  CHECK(faults[0].place.line == 1);
  CHECK(faults[1].place.line == 2);
  CHECK(faults[2].file == "b");
}

TEST_CASE("nearest: the name that was meant, or none") {
  const std::vector<std::string_view> names = {"height", "length", "wallboard", "at"};
  CHECK(nearest("heigth", names) == "height");
  CHECK(nearest("lenght", names) == "length");
  CHECK(nearest("Wallbord", names) == "wallboard");
  CHECK(nearest("lengthwise", names) == "length");
  CHECK(nearest("colour", names).empty());
  CHECK(nearest("", names).empty());
  CHECK(nearest(std::string(1000, 'h'), names).empty());
  // Two as near, or one letter: nothing is guessed. The same letters in another order are nearer.
  CHECK(nearest("IV", {"I", "II", "III"}).empty());
  CHECK(nearest("V", {"I", "II", "III"}).empty());
  CHECK(nearest("x", {"+x", "-x", "+y"}).empty());
  CHECK(nearest("si", {"is", "sd", "on"}) == "is");
}
