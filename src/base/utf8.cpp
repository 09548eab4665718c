// Decoding and encoding of UTF-8 (Unicode 15, section 3.9, table 3-7).
#include "base/utf8.h"

#include <array>

namespace nook {
namespace {

struct Lead {
  std::size_t bytes;
  char32_t bits;
  char32_t least;  // anything below was to be written shorter
};

Lead lead(unsigned char byte) {
  if (byte < 0x80) return {1, byte, 0};
  if (byte >= 0xC2 && byte < 0xE0) return {2, char32_t(byte & 0x1F), 0x80};
  if (byte >= 0xE0 && byte < 0xF0) return {3, char32_t(byte & 0x0F), 0x800};
  if (byte >= 0xF0 && byte < 0xF5) return {4, char32_t(byte & 0x07), 0x10000};
  return {0, 0, 0};
}

bool in(char32_t x, char32_t low, char32_t high) {
  return x >= low && x <= high;
}

}  // namespace

CodePoint code_point_at(std::string_view text, std::size_t at) {
  if (at >= text.size()) return {};
  const Lead first = lead(static_cast<unsigned char>(text[at]));
  if (first.bytes == 0 || text.size() - at < first.bytes) return {};
  char32_t value = first.bits;
  for (std::size_t i = 1; i < first.bytes; ++i) {
    const auto byte = static_cast<unsigned char>(text[at + i]);
    if ((byte & 0xC0) != 0x80) return {};
    value = (value << 6) | (byte & 0x3F);
  }
  if (value < first.least || value > 0x10FFFF || in(value, 0xD800, 0xDFFF)) return {};
  return {value, first.bytes};
}

std::optional<std::u32string> code_points(std::string_view text) {
  std::u32string points;
  points.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const CodePoint point = code_point_at(text, at);
    if (point.bytes == 0) return std::nullopt;
    points += point.value;
    at += point.bytes;
  }
  return points;
}

std::optional<std::size_t> first_bad_byte(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const CodePoint point = code_point_at(text, at);
    if (point.bytes == 0) return at;
    at += point.bytes;
  }
  return std::nullopt;
}

std::string utf8(std::u32string_view points) {
  std::string text;
  const auto tail = [&](char32_t x, int shift) { text += char(0x80 | ((x >> shift) & 0x3F)); };
  for (const char32_t x : points) {
    if (x < 0x80) {
      text += char(x);
    } else if (x < 0x800) {
      text += char(0xC0 | (x >> 6)), tail(x, 0);
    } else if (x < 0x10000) {
      text += char(0xE0 | (x >> 12)), tail(x, 6), tail(x, 0);
    } else {
      text += char(0xF0 | (x >> 18)), tail(x, 12), tail(x, 6), tail(x, 0);
    }
  }
  return text;
}

int terminal_columns(char32_t x) {
  // The usual ranges of combining marks and of wide letters (Unicode Standard Annex 11); a caret
  // needs no more.
  if (in(x, 0x300, 0x36F) || in(x, 0x200B, 0x200F) || in(x, 0xFE00, 0xFE0F)) return 0;
  static constexpr std::array<char32_t, 16> kWide = {
      0x1100, 0x115F, 0x2E80, 0x303E, 0x3041,  0xA4CF,  0xAC00,  0xD7A3,
      0xF900, 0xFAFF, 0xFE30, 0xFE6F, 0x1F300, 0x1FAFF, 0x20000, 0x3FFFD};
  for (std::size_t i = 0; i < kWide.size(); i += 2)
    if (in(x, kWide[i], kWide[i + 1])) return 2;
  return in(x, 0xFF00, 0xFF60) ? 2 : 1;
}

}  // namespace nook
