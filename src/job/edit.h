// Edits the text of a TOML file in place: every byte that is not asked for stays as it is.
#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

namespace nook {

/// One step into a file: a key, or an index counted from 0 where `key` is empty.
struct KeyStep {
  std::string key;
  int index = 0;
  friend bool operator==(const KeyStep&, const KeyStep&) = default;
};
using KeyPath = std::vector<KeyStep>;

/// "wall[0].plumb[1].line" as steps. Requires: keys of letters, digits, '_' and '-'; others are
/// added as steps by hand.
KeyPath key_path(std::string_view text);

/// A text as a TOML value, in single quotes where it can be.
std::string quoted(std::string_view text);

/// The text of a file under edit. Each edit either gives the whole new text, which is TOML again,
/// or says why it cannot be done and leaves the text as it was. Lines end as the file's first one
/// does.
class TextEdit {
 public:
  explicit TextEdit(std::string text) : text_(std::move(text)) {}

  using Done = tl::expected<void, std::string>;

  /// Replaces a value, or adds `key = value` to its table; makes the table where it is missing and
  /// its own table is there. `value` is TOML.
  Done set(const KeyPath& path, std::string_view value);
  /// Adds a value to the end of a list [...].
  Done append(const KeyPath& list, std::string_view value);
  /// Adds a table to the end of a [[key]], made where it is missing: [[wall.plumb]] for
  /// wall[0].plumb. `lines` are its keys, each line ended by '\n'.
  Done append_table(const KeyPath& key, std::string_view lines);
  /// Takes out a key with its line, an item of a list, or a table with all that is in it.
  Done remove(const KeyPath& path);

  const std::string& text() const { return text_; }

 private:
  Done take(tl::expected<std::string, std::string> text);

  std::string text_;
};

}  // namespace nook
