// Breaks text into lines of a terminal's width.
#pragma once

#include <string>
#include <string_view>

namespace nook {

/// The width of a page of text, in characters.
inline constexpr int kPageWidth = 80;

/// `text` behind `first`, broken at blanks so that no line is wider than `width` where its words
/// allow; the lines that follow start under the text. Width in code points. Ends in a newline.
std::string wrapped(std::string_view text, int width, std::string_view first);

}  // namespace nook
