// Schemas and docs/formats.md know the keys that the readers know, no more and no less.
#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "job/keys.h"
#include "source_dir.h"

using namespace nook;
using nlohmann::json;

namespace {

std::string text_of(const std::string& path) {
  std::ifstream file(NOOKFIT_SOURCE_DIR "/docs/" + path);
  REQUIRE(file);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

std::set<std::string> keys_of(const KeyList& list) {
  return {list.keys.begin(), list.keys.end()};
}

std::set<std::string> properties(const json& definition) {
  std::set<std::string> keys;
  for (const auto& [key, value] : definition.at("properties").items()) {
    CHECK_FALSE(value.at("description").get<std::string>().empty());
    keys.insert(key);
  }
  return keys;
}

void check_schema(const std::string& file, const std::vector<const KeyList*>& lists) {
  const json schema = json::parse(text_of("schema/" + file + ".schema.json"));
  std::set<std::string> known;
  for (const KeyList* list : lists) {
    INFO(file << " " << list->name);
    const bool root = list == lists.front();
    const json& definition = root ? schema : schema.at("$defs").at(std::string(list->name));
    CHECK(properties(definition) == keys_of(*list));
    CHECK(definition.at("additionalProperties") == false);
    known.insert(std::string(list->name));
  }
  for (const auto& [name, definition] : schema.at("$defs").items())
    if (definition.contains("properties")) CHECK(known.count(name) == 1);
}

// The keys in the rows of the table behind an anchor.
std::set<std::string> rows_behind(const std::string& text, const std::string& anchor) {
  std::set<std::string> keys;
  const std::size_t from = text.find("<a id=\"" + anchor + "\"></a>");
  REQUIRE(from != std::string::npos);
  std::istringstream lines(text.substr(from + 5, text.find("<a id=", from + 5) - from - 5));
  for (std::string line; std::getline(lines, line);)
    if (line.starts_with("| `")) keys.insert(line.substr(3, line.find('`', 3) - 3));
  return keys;
}

void check_docs(const std::string& file, const std::vector<const KeyList*>& lists) {
  const std::string text = text_of("formats.md");
  for (const KeyList* list : lists) {
    const std::string anchor = file + "-" + std::string(list->name);
    if (list->name == "reading" && file == "pieces") continue;  // said once, under room.toml
    if (list->name == "position" && file != "room") continue;
    INFO(anchor);
    CHECK(rows_behind(text, anchor) == keys_of(*list));
  }
}

}  // namespace

TEST_CASE("formats: each schema has the keys the reader knows") {
  check_schema("room", room_key_lists());
  check_schema("design", design_key_lists());
  check_schema("pieces", pieces_key_lists());
}

TEST_CASE("formats: docs/formats.md has a row for each key the reader knows") {
  check_docs("room", room_key_lists());
  check_docs("design", design_key_lists());
  check_docs("pieces", pieces_key_lists());
}
