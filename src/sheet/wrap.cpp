// Breaks text into lines of a terminal's width.
#include "sheet/wrap.h"

#include <algorithm>

namespace nook {
namespace {

int columns(std::string_view text) {
  return static_cast<int>(
      std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

std::string_view next_word(std::string_view& text) {
  const auto start = text.find_first_not_of(' ');
  if (start == std::string_view::npos) return text = {};
  const auto end = std::min(text.find(' ', start), text.size());
  const std::string_view word = text.substr(start, end - start);
  text.remove_prefix(end);
  return word;
}

}  // namespace

std::string wrapped(std::string_view text, int width, std::string_view first) {
  const int indent = columns(first);
  std::string all(first);
  int at = indent;
  for (auto word = next_word(text); !word.empty(); word = next_word(text)) {
    const int wide = columns(word);
    if (at > indent && at + 1 + wide > width) {
      all += "\n" + std::string(indent, ' ');
      at = indent;
    }
    if (at > indent) all += ' ', ++at;
    all += word;
    at += wide;
  }
  while (!all.empty() && all.back() == ' ') all.pop_back();
  return all + "\n";
}

}  // namespace nook
