// Makes the message of a fault: the line as typed, a caret as wide as the fault, what to do.
#include "base/diagnostic.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <tuple>

#include "base/utf8.h"

namespace nook {
namespace {

// Characters of a line that are shown at most, and how many of them stand before the fault
// (chosen).
constexpr int kShown = 100;
constexpr int kBefore = 40;

std::string_view line_of(std::string_view text, int line) {
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  for (int passed = 1; passed < line; ++passed) {
    const std::size_t end = text.find('\n');
    if (end == std::string_view::npos) return {};
    text.remove_prefix(end + 1);
  }
  text = text.substr(0, text.find('\n'));
  if (text.ends_with('\r')) text.remove_suffix(1);
  return text;
}

// What a terminal would obey rather than show becomes a question mark; so does what is not UTF-8.
std::u32string showable(std::string_view line) {
  std::u32string points;
  for (std::size_t at = 0; at < line.size();) {
    const CodePoint point = code_point_at(line, at);
    const bool control = point.value < 0x20 || (point.value >= 0x7F && point.value < 0xA0) ||
                         (point.value >= 0x202A && point.value <= 0x202E) ||
                         (point.value >= 0x2066 && point.value <= 0x2069);
    const bool shown = point.bytes > 0 && (!control || point.value == U'\t');
    points += shown ? point.value : U'?';
    at += std::max<std::size_t>(point.bytes, 1);
  }
  return points;
}

std::string plain(std::string_view text) {
  std::u32string points = showable(text);
  std::replace(points.begin(), points.end(), U'\t', U' ');
  return utf8(points);
}

// The part of a line around the fault, and where the fault stands in it.
struct Window {
  std::u32string shown;
  int at = 0, width = 1;
};
bool starts_character(char c) {
  return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
}

// The characters from `from` on of a line, `count` at most. Lines may be megabytes long.
std::string_view characters(std::string_view line, int from, int count) {
  const auto skip = [&](std::size_t at, int characters) {
    for (int left = characters; at < line.size(); ++at)
      if (starts_character(line[at]) && left-- == 0) break;
    return at;
  };
  const std::size_t start = skip(0, from);
  return line.substr(start, skip(start, count) - start);
}

Window window(std::string_view line, Place place) {
  const int size = static_cast<int>(std::count_if(line.begin(), line.end(), starts_character));
  const int at = std::clamp(place.column - 1, 0, size);
  const int from = size > kShown ? std::clamp(at - kBefore, 0, size - kShown) : 0;
  const int to = std::min(size, from + kShown);
  Window found{showable(characters(line, from, kShown)), at - from,
               std::clamp(place.width, 1, std::max(1, to - at))};
  if (from > 0) {
    found.shown = U"..." + found.shown;
    found.at += 3;
  }
  if (to < size) found.shown += U"...";
  return found;
}

std::string caret_line(const Window& window) {
  std::string line;
  for (int i = 0; i < window.at; ++i) {
    const char32_t point = window.shown[i];
    line += point == U'\t' ? "\t" : std::string(terminal_columns(point), ' ');
  }
  int columns = 0;
  for (int i = window.at; i < window.at + window.width; ++i)
    columns += i < static_cast<int>(window.shown.size()) ? terminal_columns(window.shown[i]) : 1;
  return line + std::string(std::max(columns, 1), '^');
}

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? char(c - 'A' + 'a') : c;
}

// Edit distance with neighboring letters swapped counting once (Damerau 1964, restricted form).
int distance(std::string_view a, std::string_view b) {
  std::vector<int> before, above(b.size() + 1), row(b.size() + 1);
  std::iota(above.begin(), above.end(), 0);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = static_cast<int>(i);
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const bool same = lower(a[i - 1]) == lower(b[j - 1]);
      row[j] = std::min({above[j] + 1, row[j - 1] + 1, above[j - 1] + (same ? 0 : 1)});
      const bool swapped = i > 1 && j > 1 && lower(a[i - 1]) == lower(b[j - 2]) &&
                           lower(a[i - 2]) == lower(b[j - 1]);
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    before = above;
    above = row;
  }
  return above.back();
}

// Twice the slips between two words; the same letters in another order, or a known word with an
// ending ("inches" for "inch"), are half a slip nearer.
int unlikeness(std::string_view word, std::string_view candidate) {
  if (candidate.size() >= 4 && word.starts_with(candidate)) return 1;
  std::string a(word), b(candidate);
  std::sort(a.begin(), a.end());
  std::sort(b.begin(), b.end());
  return 2 * distance(word, candidate) - (a == b ? 1 : 0);
}

}  // namespace

std::string message(const Diagnostic& fault, std::string_view text) {
  std::string out = plain(fault.file);
  if (fault.place.line > 0) out += fmt::format(":{}:{}", fault.place.line, fault.place.column);
  out += fmt::format(": error: {} [{}]\n", plain(fault.what), fault.code);
  if (fault.place.line > 0) {
    const Window found = window(line_of(text, fault.place.line), fault.place);
    out += fmt::format("{:>5} | {}\n      | {}\n", fault.place.line, utf8(found.shown),
                       caret_line(found));
  }
  if (!fault.help.empty()) out += fmt::format("help: {}\n", plain(fault.help));
  return out;
}

void sort(Diagnostics& faults) {
  const auto key = [](const Diagnostic& d) {
    return std::tie(d.file, d.place.line, d.place.column, d.what, d.code);
  };
  std::sort(faults.begin(), faults.end(),
            [&](const Diagnostic& a, const Diagnostic& b) { return key(a) < key(b); });
  faults.erase(std::unique(faults.begin(), faults.end()), faults.end());
}

std::string_view nearest(std::string_view word, const std::vector<std::string_view>& candidates) {
  // One slip in three letters is near enough to be meant; words longer than any name are not, and
  // more candidates than anybody names are not looked through (all chosen).
  constexpr std::size_t kLongest = 64, kMostCandidates = 2000;
  if (word.empty() || word.size() > kLongest) return {};
  std::string_view best;
  bool tied = false;
  int least = 2 * std::max(1, static_cast<int>(word.size()) / 3);
  for (std::size_t i = 0; i < std::min(candidates.size(), kMostCandidates); ++i) {
    const std::string_view candidate = candidates[i];
    if (candidate.size() > kLongest) continue;
    const int off = unlikeness(word, candidate);
    if (off > least || candidate == best) continue;
    tied = off == least && !best.empty();
    least = off, best = candidate;
  }
  // Two that are as near, or a single letter: nothing says which was meant.
  return tied || best.size() < 2 ? std::string_view() : best;
}

}  // namespace nook
