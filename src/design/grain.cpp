// Kinds of stock are words that a person typed: boards of chips and fibers are told by theirs.
#include "design/grain.h"

#include <algorithm>
#include <cctype>
#include <iterator>

namespace nook {

bool solid_wood(const Stock& stock) {
  if (stock.kind == StockKind::lumber) return true;
  if (stock.kind != StockKind::board) return false;
  std::string kind = stock.kind_given;
  for (char& c : kind) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  constexpr const char* kMade[] = {"mdf",   "particle", "chip",  "fiber",      "fibre",
                                   "flake", "strand",   "wafer", "hard board", "melamine"};
  return std::none_of(std::begin(kMade), std::end(kMade),
                      [&](const char* word) { return kind.find(word) != std::string::npos; });
}

bool grain_along_v(const Part& part, const Stock& stock) {
  if (stock.kind == StockKind::lumber) return false;
  Vec2 low = part.outline.front(), high = low;
  for (const Vec2 p : part.outline) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  return high.y - low.y > high.x - low.x;
}

}  // namespace nook
