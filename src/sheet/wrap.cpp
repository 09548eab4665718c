// Breaks text into lines of a terminal's width.
#include "sheet/wrap.h"

#include <algorithm>

namespace nook {
namespace {

int columns(std::string_view text) {
  return static_cast<int>(
      std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// Whether it starts with a fraction, or with a unit that ends there.
bool goes_with_number(std::string_view text) {
  const auto digits = text.find_first_not_of("0123456789");
  if (digits != std::string_view::npos && digits > 0) return text[digits] == '/';
  const std::string_view word = text.substr(0, text.find_first_of(" ,.;:)"));
  constexpr std::string_view kUnits[] = {"mm", "cm", "m", "lb", "kg", "N", "degrees", "%"};
  return std::find(std::begin(kUnits), std::end(kUnits), word) != std::end(kUnits);
}

std::string_view next_word(std::string_view& text) {
  const auto start = text.find_first_not_of(' ');
  if (start == std::string_view::npos) return text = {};
  const auto end = break_after(text, start);
  const std::string_view word = text.substr(start, end - start);
  text.remove_prefix(end);
  return word;
}

}  // namespace

std::size_t break_after(std::string_view text, std::size_t from) {
  auto blank = text.find(' ', from);
  while (blank != std::string_view::npos && blank > from && is_digit(text[blank - 1]) &&
         goes_with_number(text.substr(blank + 1)))
    blank = text.find(' ', blank + 1);
  return std::min(blank, text.size());
}

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
