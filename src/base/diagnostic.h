// A fault in a user's file with its place, and the one function that makes its message.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace nook {

/// Where something stands in a file. Lines and columns count from 1, columns in code points.
/// line 0 = the file as a whole.
struct Place {
  int line = 0;
  int column = 0;
  int width = 1;

  friend bool operator==(const Place&, const Place&) = default;
};

/// A name of something described elsewhere, and where it was typed.
struct Mention {
  std::string name;
  Place place;
};

/// One fault of a user's file.
struct Diagnostic {
  std::string file;  // as the user named it
  Place place;
  std::string what;  // one line, no full stop
  std::string code;  // kebab-case, permanent
  std::string help;  // what to do; may be empty

  friend bool operator==(const Diagnostic&, const Diagnostic&) = default;
};
using Diagnostics = std::vector<Diagnostic>;

/// The message as it is printed:
///   FILE:LINE:COLUMN: error: what is wrong [code]
///      12 | the line as typed
///         |      ^^^^
///   help: what to do
/// `text` is the whole text of the file; the caret is as wide as the fault. Ends in a newline.
std::string message(const Diagnostic& fault, std::string_view text);

/// Sorts by file and place, and drops repeats.
void sort(Diagnostics& faults);

/// The candidate nearest to `word` by edit distance, if near enough to be meant; else empty.
std::string_view nearest(std::string_view word, const std::vector<std::string_view>& candidates);

}  // namespace nook
