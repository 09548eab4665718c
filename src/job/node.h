// A TOML file as a plain tree: every value with its place, tables in the order of the file.
#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "base/diagnostic.h"

namespace nook {

struct Entry;

/// One value of a file. A table made by a header has the header as its place,
/// the root none (line 0).
struct Node {
  enum class Kind { string, integer, real, boolean, date, list, table };

  Kind kind = Kind::string;
  Place place;
  Place end;                   // just behind it; of a table made by a header: behind the header
  std::string text;            // of a string its content; of a number as typed
  double number = 0;           // integer, real
  bool flag = false;           // boolean
  std::vector<Node> items;     // list
  std::vector<Entry> entries;  // table

  bool is(Kind asked) const { return kind == asked; }
  bool is_number() const { return kind == Kind::integer || kind == Kind::real; }
  /// The entry of a table with that key, or null.
  const Entry* find(std::string_view key) const;
};

struct Entry {
  std::string key;
  Place place;  // of the key
  Node value;
};

/// "a text", "a list", ...: what a value is, for messages.
std::string_view kind_in_words(const Node& node);

/// The tree of a TOML text; the first fault of syntax where it is not TOML.
tl::expected<Node, Diagnostic> parse_tree(std::string_view text, const std::string& file);

}  // namespace nook
