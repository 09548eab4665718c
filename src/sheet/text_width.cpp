// Advance widths of DejaVu Sans and DejaVu Sans Bold, 2.37, in 1/2048 of the em.
#include "sheet/text_width.h"

#include <algorithm>

#include "sheet/wrap.h"

namespace nook {
namespace {

constexpr double kEm = 2048;
constexpr char32_t kAsciiFirst = 32, kAsciiLast = 126, kLatinFirst = 160, kLatinLast = 255;

// Characters 32 to 126, then 160 to 255 (table hmtx of the font file).
constexpr short kPlain[] = {
    651,  821,  942,  1716, 1303, 1946, 1597, 563,  799,  799,  1024, 1716, 651,  739,  651,  690,
    1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 690,  690,  1716, 1716, 1716, 1087,
    2048, 1401, 1405, 1430, 1577, 1294, 1178, 1587, 1540, 604,  604,  1343, 1141, 1767, 1532, 1612,
    1235, 1612, 1423, 1300, 1251, 1499, 1401, 2025, 1403, 1251, 1403, 799,  690,  799,  1716, 1024,
    1024, 1255, 1300, 1126, 1300, 1260, 721,  1300, 1298, 569,  569,  1186, 569,  1995, 1298, 1253,
    1300, 1300, 842,  1067, 803,  1298, 1212, 1675, 1212, 1212, 1075, 1303, 690,  1303, 1716, 651,
    821,  1303, 1303, 1303, 1303, 690,  1024, 1024, 2048, 965,  1253, 1716, 739,  2048, 1024, 1024,
    1716, 821,  821,  1024, 1303, 1303, 651,  1024, 821,  965,  1253, 1985, 1985, 1985, 1087, 1401,
    1401, 1401, 1401, 1401, 1401, 1995, 1430, 1294, 1294, 1294, 1294, 604,  604,  604,  604,  1587,
    1532, 1612, 1612, 1612, 1612, 1612, 1716, 1612, 1499, 1499, 1499, 1499, 1251, 1239, 1290, 1255,
    1255, 1255, 1255, 1255, 1255, 2011, 1126, 1260, 1260, 1260, 1260, 569,  569,  569,  569,  1253,
    1298, 1253, 1253, 1253, 1253, 1253, 1716, 1253, 1298, 1298, 1298, 1298, 1212, 1300, 1212,
};
constexpr short kBold[] = {
    713,  934,  1067, 1716, 1425, 2052, 1786, 627,  936,  936,  1071, 1716, 778,  850,  778,  748,
    1425, 1425, 1425, 1425, 1425, 1425, 1425, 1425, 1425, 1425, 819,  819,  1716, 1716, 1716, 1188,
    2048, 1585, 1561, 1503, 1700, 1399, 1399, 1681, 1714, 762,  762,  1587, 1305, 2038, 1714, 1741,
    1501, 1741, 1577, 1475, 1397, 1663, 1585, 2259, 1579, 1483, 1485, 936,  748,  936,  1716, 1024,
    1024, 1382, 1466, 1214, 1466, 1389, 891,  1466, 1458, 702,  702,  1362, 702,  2134, 1458, 1407,
    1466, 1466, 1010, 1219, 979,  1458, 1335, 1892, 1321, 1335, 1192, 1458, 748,  1458, 1716, 713,
    934,  1425, 1425, 1303, 1425, 748,  1024, 1024, 2048, 1155, 1323, 1716, 850,  2048, 1024, 1024,
    1716, 897,  897,  1024, 1507, 1303, 778,  1024, 897,  1155, 1323, 2120, 2120, 2120, 1188, 1585,
    1585, 1585, 1585, 1585, 1585, 2222, 1503, 1399, 1399, 1399, 1399, 762,  762,  762,  762,  1716,
    1714, 1741, 1741, 1741, 1741, 1741, 1716, 1741, 1663, 1663, 1663, 1663, 1483, 1511, 1473, 1382,
    1382, 1382, 1382, 1382, 1382, 2146, 1214, 1389, 1389, 1389, 1389, 702,  702,  702,  702,  1407,
    1458, 1407, 1407, 1407, 1407, 1407, 1716, 1407, 1458, 1458, 1458, 1458, 1335, 1466, 1335,
};
static_assert(std::size(kPlain) == 191 && std::size(kBold) == 191);

// The next character of UTF-8 text; a byte that is none stands for itself.
char32_t next(std::string_view& rest) {
  const unsigned char first = rest.front();
  const int more = first >= 0xF0 ? 3 : first >= 0xE0 ? 2 : first >= 0xC0 ? 1 : 0;
  char32_t c = more ? first & (0x3F >> more) : first;
  rest.remove_prefix(1);
  for (int i = 0; i < more && !rest.empty(); ++i, rest.remove_prefix(1))
    c = c << 6 | (rest.front() & 0x3F);
  return c;
}

double advance(char32_t c, bool bold) {
  const short* widths = bold ? kBold : kPlain;
  if (c >= kAsciiFirst && c <= kAsciiLast) return widths[c - kAsciiFirst];
  if (c >= kLatinFirst && c <= kLatinLast)
    return widths[c - kLatinFirst + (kAsciiLast - kAsciiFirst + 1)];
  return kEm;
}

// How many bytes of `word` fit in `width`, at least one character.
std::size_t fitting(std::string_view word, double size, double width, bool bold) {
  std::string_view rest = word;
  double used = 0;
  while (!rest.empty()) {
    const std::string_view before = rest;
    used += advance(next(rest), bold) * size / kEm;
    if (used > width && before.size() < word.size()) return word.size() - before.size();
  }
  return word.size();
}

}  // namespace

double width_of(std::string_view words, double size, bool bold) {
  double total = 0;
  while (!words.empty()) total += advance(next(words), bold);
  return total * size / kEm;
}

std::vector<std::string> lines_within(std::string_view words, double size, double width,
                                      bool bold) {
  std::vector<std::string> lines;
  std::string line;
  while (!words.empty()) {
    const std::size_t end = break_after(words, 0);
    std::string_view word = words.substr(0, end);
    words.remove_prefix(std::min(end + 1, words.size()));
    const std::string longer = line.empty() ? std::string(word) : line + " " + std::string(word);
    if (width_of(longer, size, bold) <= width) {
      line = longer;
      continue;
    }
    if (!line.empty()) lines.push_back(std::move(line));
    while (width_of(word, size, bold) > width && word.size() > 1) {
      const std::size_t part = fitting(word, size, width, bold);
      if (part == word.size()) break;
      lines.emplace_back(word.substr(0, part));
      word.remove_prefix(part);
    }
    line = word;
  }
  if (!line.empty() || lines.empty()) lines.push_back(std::move(line));
  return lines;
}

}  // namespace nook
