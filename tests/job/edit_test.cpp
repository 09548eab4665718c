// Edits in place: byte for byte what was asked for, and nothing else.
#include "job/edit.h"

#include <catch2/catch.hpp>
#include <random>

#include "job/node.h"
#include "job/samples.h"

using namespace nook;

namespace {

std::string after_set(std::string text, const char* path, const char* value) {
  TextEdit edit(std::move(text));
  const auto done = edit.set(key_path(path), value);
  INFO((done ? "" : done.error()));
  REQUIRE(done);
  return edit.text();
}

// A value of one line as typed (ASCII before it).
std::string typed(const std::string& text, const Node& node) {
  std::size_t start = 0;
  for (int line = 1; line < node.place.line; ++line) start = text.find('\n', start) + 1;
  return text.substr(start + node.place.column - 1, node.place.width);
}

std::string after_append(std::string text, const char* path, const char* value) {
  TextEdit edit(std::move(text));
  const auto done = edit.append(key_path(path), value);
  INFO((done ? "" : done.error()));
  REQUIRE(done);
  return edit.text();
}

std::string after_table(std::string text, const char* path, const char* lines) {
  TextEdit edit(std::move(text));
  const auto done = edit.append_table(key_path(path), lines);
  INFO((done ? "" : done.error()));
  REQUIRE(done);
  return edit.text();
}

std::string after_remove(std::string text, const char* path) {
  TextEdit edit(std::move(text));
  const auto done = edit.remove(key_path(path));
  INFO((done ? "" : done.error()));
  REQUIRE(done);
  return edit.text();
}

const std::string kWalls =
    "# my room\n"
    "units = \"inch\"   # inches\n"
    "\n"
    "[[wall]]\n"
    "  name   = 'left'  # the long one\n"
    "  length = ['118 3/8',  # first\n"
    "            '118 7/16'] # again\n"
    "# between\n"
    "[[wall.plumb]]\n"
    "at = '24'\n"
    "line = [['8', '2'], ['48', '2 1/4']]\n"
    "\n"
    "[[wall]]\n"
    "name = 'right'\n"
    "baseboard = { height = '5 1/4' }\n";

}  // namespace

TEST_CASE("edit: a value is replaced and its remark stays") {
  CHECK(after_set("a = '1'   # one\r\nb = 2\r\n", "a", "'2 1/2'") ==
        "a = '2 1/2'   # one\r\nb = 2\r\n");
  CHECK(after_set("x = [['8', '2'], ['48', '3']]\n", "x[1][1]", "{ is = '3', struck = true }") ==
        "x = [['8', '2'], ['48', { is = '3', struck = true }]]\n");
  CHECK(after_set("'é' = 1\n\"ä ö\" = { 'ü' = '⅜', b = 2 }\n", "b", "1") ==
        "'é' = 1\n\"ä ö\" = { 'ü' = '⅜', b = 2 }\nb = 1\n");
}

TEST_CASE("edit: a new key goes behind the last one of its table, indented like it") {
  const std::string text = after_set(kWalls, "wall[0].ends_at", "'casing'");
  std::string wanted = kWalls;
  wanted.insert(wanted.find("# between"), "  ends_at = 'casing'\n");
  CHECK(text == wanted);
}

TEST_CASE("edit: dots in a quoted header are no keys of their own") {
  for (const std::string header : {"['3/4 in. ply']", "[\"3/4 in. ply\"]"}) {
    TextEdit edit("[a]\nb = 1\n" + header + "\nc = 1\n[d]\n");
    REQUIRE(edit.set({{"3/4 in. ply", 0}, {"e", 0}}, "2"));
    CHECK(edit.text() == "[a]\nb = 1\n" + header + "\nc = 1\ne = 2\n[d]\n");
  }
}

TEST_CASE("edit: a new key of the file itself goes before the first table") {
  CHECK(after_set(kWalls, "title", "'x'") ==
        "# my room\nunits = \"inch\"   # inches\ntitle = 'x'\n" +
            kWalls.substr(kWalls.find("\n[[wall]]")));
  CHECK(after_set("[a]\nb = 1", "title", "'x'") == "title = 'x'\n[a]\nb = 1");
  CHECK(after_set("", "title", "'x'") == "title = 'x'\n");
  CHECK(after_set("\xEF\xBB\xBF[a]\n", "t", "1") == "\xEF\xBB\xBFt = 1\n[a]\n");
}

TEST_CASE("edit: a new key of a table in braces") {
  CHECK(after_set(kWalls, "wall[1].baseboard.shoe", "'1/2'")
            .ends_with("baseboard = { height = '5 1/4', shoe = '1/2' }\n"));
  CHECK(after_set("a = {}\n", "a.b", "1") == "a = { b = 1 }\n");
}

TEST_CASE("edit: a missing table is made behind the one above") {
  const std::string text = after_set(kWalls, "wall[0].studs.kind", "\"wood\"");
  std::string wanted = kWalls;
  wanted.insert(wanted.find("\n[[wall]]\nname = 'right'"), "[wall.studs]\nkind = \"wood\"\n");
  CHECK(text == wanted);
  CHECK(after_set("a = 1", "floor.heated", "false") == "a = 1\n[floor]\nheated = false\n");
}

TEST_CASE("edit: an item goes to the end of a list, on its own line where the others have one") {
  CHECK(after_append("x = []\n", "x", "1") == "x = [1]\n");
  CHECK(after_append("x = [1, 2]  # two\n", "x", "3") == "x = [1, 2, 3]  # two\n");
  CHECK(after_append("x = [1, 2,]\n", "x", "3") == "x = [1, 2, 3,]\n");
  CHECK(after_append("x = [\n  1,\n  2\n]\n", "x", "3") == "x = [\n  1,\n  2,\n  3\n]\n");
  CHECK(after_append("x = [\n  1, # a\n  2, # b\n]\n", "x", "3") ==
        "x = [\n  1, # a\n  2, # b\n  3,\n]\n");
  CHECK(after_append("x = [\r\n  1, # a\r\n  2 # b\r\n]\r\n", "x", "3") ==
        "x = [\r\n  1, # a\r\n  2, # b\r\n  3\r\n]\r\n");
  CHECK(after_append(kWalls, "wall[0].plumb[0].line", "['90', '2 1/2']")
            .find("['48', '2 1/4'], ['90', '2 1/2']]") != std::string::npos);
}

TEST_CASE("edit: a table goes behind the last of its kind, or behind the one above") {
  const std::string plumb = "[[wall.plumb]]\nat = '60'\n";
  std::string wanted = kWalls;
  wanted.insert(wanted.find("\n[[wall]]\nname = 'right'"), plumb);
  CHECK(after_table(kWalls, "wall[0].plumb", "at = '60'\n") == wanted);
  CHECK(after_table(kWalls, "wall[1].plumb", "at = '60'\n") == kWalls + plumb);
  CHECK(after_table(kWalls, "wall", "name = 'x'\n") == kWalls + "[[wall]]\nname = 'x'\n");
  CHECK(after_table("", "wall", "name = 'x'\n") == "[[wall]]\nname = 'x'\n");
  CHECK(after_table("a = 1\r\n", "wall", "name = 'x'\n") == "a = 1\r\n[[wall]]\r\nname = 'x'\r\n");
}

TEST_CASE("edit: what is taken out goes with its line, its comma or all of its table") {
  CHECK(after_remove("a = 1\nb = 2 # two\nc = 3\n", "b") == "a = 1\nc = 3\n");
  CHECK(after_remove("x = [1, 2, 3]\n", "x[1]") == "x = [1, 3]\n");
  CHECK(after_remove("x = [1, 2, 3]\n", "x[2]") == "x = [1, 2]\n");
  CHECK(after_remove("x = [1]\n", "x[0]") == "x = []\n");
  CHECK(after_remove("x = { a = 1, b = 2 }\n", "x.b") == "x = { a = 1 }\n");
  CHECK(after_remove("x = { a = 1, b = 2 }\n", "x.a") == "x = { b = 2 }\n");
  CHECK(after_remove(kWalls, "wall[1]") == kWalls.substr(0, kWalls.rfind("[[wall]]")));
  CHECK(after_remove("x = [1,\n 2] # y\nz = 1\n", "x") == "z = 1\n");
}

TEST_CASE("edit: what cannot be done says why and changes nothing") {
  TextEdit edit(kWalls);
  CHECK(edit.set(key_path("wall[7].name"), "'x'").error() == "there is no wall[7]");
  CHECK(edit.set(key_path("wall[0]"), "'x'").error() == "wall[0] is a table with a header");
  CHECK(edit.set(key_path("wall[0].name.x"), "1").error() == "wall[0].name is no table");
  CHECK(edit.append(key_path("wall"), "1").error() == "wall is no list in brackets");
  CHECK_FALSE(edit.set(key_path("title"), "'unclosed"));
  CHECK_FALSE(edit.remove(key_path("title")));
  CHECK(edit.text() == kWalls);
  TextEdit dotted("a.b = 1\nw = [{ c = 1 }]\n");
  CHECK(dotted.set(key_path("a.d"), "2").error() == "a has no header of its own");
  CHECK(dotted.append_table(key_path("w"), "c = 2\n").error() == "w is written in brackets");
  CHECK(dotted.append_table(key_path("x[0].y"), "c = 2\n").error() == "there is no x[0]");
  CHECK(dotted.text() == "a.b = 1\nw = [{ c = 1 }]\n");
}

TEST_CASE("edit: texts are quoted so that they read back") {
  for (const std::string& text :
       std::vector<std::string>{"41 3/8", "3' 5\"", "back\\slash", "line\nbreak", "é ⅜", ""}) {
    const auto tree = parse_tree("a = " + quoted(text), "f");
    REQUIRE(tree);
    CHECK(tree->find("a")->value.text == text);
  }
  CHECK(quoted("41 3/8") == "'41 3/8'");
}

TEST_CASE("edit: every number and text of the samples replaced and put back leaves the same bytes",
          "[property]") {
  for (const std::string& text : {kRoom, kDesign, kAlcove}) {
    int edited = 0;
    const auto visit = [&](const auto& self, const Node& node, const KeyPath& path) -> void {
      for (std::size_t i = 0; i < node.items.size(); ++i) {
        KeyPath next = path;
        next.push_back({"", static_cast<int>(i)});
        self(self, node.items[i], next);
      }
      for (const Entry& entry : node.entries) {
        KeyPath next = path;
        next.push_back({entry.key, 0});
        self(self, entry.value, next);
      }
      if (!node.is(Node::Kind::string) && !node.is_number()) return;
      TextEdit edit(text);
      REQUIRE(edit.set(path, "'something else'"));
      REQUIRE(edit.text() != text);
      const std::string back = typed(text, node);
      REQUIRE(edit.set(path, back));
      REQUIRE(edit.text() == text);
      ++edited;
    };
    visit(visit, *parse_tree(text, "f"), {});
    CHECK(edited > 10);
  }
}
