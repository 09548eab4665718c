// Breaks text into lines of a terminal's width.
#pragma once

#include <string>
#include <string_view>

namespace nook {

/// The width of a page of text, in characters.
inline constexpr int kPageWidth = 80;

/// The first blank from `from` on at which a line may end: none that parts a number from its
/// fraction or its unit. The length of the text where there is none.
std::size_t break_after(std::string_view text, std::size_t from);

/// `text` behind `first`, broken at blanks so that no line is wider than `width` where its words
/// allow; the lines that follow start under the text. Width in code points. Ends in a newline.
std::string wrapped(std::string_view text, int width, std::string_view first);
/// The same on a page, two blanks in.
inline std::string indented(std::string_view text) {
  return wrapped(text, kPageWidth, "  ");
}

}  // namespace nook
