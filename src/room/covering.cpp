// The kind of a covering, as typed, asked for soft words.
#include "room/covering.h"

#include <algorithm>
#include <cctype>
#include <iterator>

namespace nook {

bool gives(const Floor& floor) {
  const auto sank = [](const Squash& test) { return test.by.mm > 0; };
  if (std::any_of(floor.squash.begin(), floor.squash.end(), sank)) return true;
  if (!floor.covering) return false;
  std::string kind = floor.covering->kind;
  for (char& c : kind) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  constexpr const char* kSoft[] = {"carpet", "rug", "felt", "foam", "mat", "cushion"};
  return std::any_of(std::begin(kSoft), std::end(kSoft),
                     [&](const char* soft) { return kind.find(soft) != std::string::npos; });
}

}  // namespace nook
