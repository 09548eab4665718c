// UTF-8 text as code points: what columns count and carets line up with.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace nook {

/// One code point of a text, and how many bytes it takes (0 at the end or where it is not UTF-8).
struct CodePoint {
  char32_t value = 0;
  std::size_t bytes = 0;
};
/// The code point that starts at byte `at`. Overlong forms and surrogates are not UTF-8.
CodePoint code_point_at(std::string_view text, std::size_t at);

/// The code points of a text; nothing where it is not UTF-8.
std::optional<std::u32string> code_points(std::string_view text);

/// The byte where a text stops being UTF-8; nothing where all of it is.
std::optional<std::size_t> first_bad_byte(std::string_view text);

/// The UTF-8 of code points. Requires: each below 0x110000.
std::string utf8(std::u32string_view points);

/// How many columns of a terminal a code point takes: 0, 1 or 2.
int terminal_columns(char32_t point);

}  // namespace nook
