// The text of a TOML file with its tree: where in the text each value, key and table stands.
#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "job/edit.h"
#include "job/node.h"

namespace nook {

/// How a table is written: as the file itself, under a header, in braces, by dotted keys, or only
/// implied by the header of a table in it.
enum class Written { root, header, braces, dotted, implied };

class Page {
 public:
  /// The text must outlive the page.
  static tl::expected<Page, std::string> of(std::string_view text);

  /// The value a path leads to, or null.
  const Node* find(const KeyPath& path) const;
  /// How the table at a path is written.
  Written written(const Node& table, const KeyPath& path) const;
  /// Whether a value is a table with a header, or a list of such.
  bool has_header(const Node& value) const;

  /// The byte of a place.
  std::size_t byte(Place place) const;
  std::size_t from(const Node& value) const { return byte(value.place); }
  /// Behind the last byte of a value, the tables in it included.
  std::size_t end(const Node& value) const;
  /// The last key that stands in a table's own section, or null.
  const Entry* last_key(const Node& table) const;
  /// The start of the line that a byte stands in, and of the next one (or the end of the text).
  std::size_t line_start(std::size_t at) const;
  std::size_t next_line(std::size_t at) const;
  /// The blanks that a byte's line starts with.
  std::string indent(std::size_t at) const;

  std::string_view text() const { return text_; }
  /// How the file's first line ends.
  const std::string& newline() const { return newline_; }

 private:
  Page(std::string_view text, Node root);

  std::string_view text_;
  Node root_;
  std::vector<std::size_t> starts_;  // of each line
  std::string newline_ = "\n";
};

/// A path as it is read ("wall[0].length"), and as the header of a table ("wall.studs").
std::string in_words(const KeyPath& path);
std::string header(const KeyPath& path);
/// A key as TOML: bare where it can be.
std::string as_key(const std::string& key);

}  // namespace nook
