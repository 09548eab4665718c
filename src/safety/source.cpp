// The table of documents. None of them is replaced by what is said here.
#include "safety/source.h"

#include <fmt/format.h>

namespace nook {
namespace {

using enum Known;

// In the order of `From`.
constexpr NamedSource kSources[] = {
    {"guard-opening", "16 CFR 1213.4, wedge block", read},
    {"window-near", "IRC R312.2", from_memory},
    {"escape-window", "IRC R310", from_memory},
    {"screw-reaches-cable", "IRC P2603.2.1 for pipes", from_memory},
    {"loose-lid", "ASTM F963, 4.27, toy chests", from_memory},
    {"lead-paint", "40 CFR 745", from_memory},
};

}  // namespace

std::span<const NamedSource> named_sources() {
  return kSources;
}

std::string cited(From which) {
  static_assert(std::size(kSources) == static_cast<std::size_t>(From::lead_dust) + 1);
  const NamedSource& source = kSources[static_cast<std::size_t>(which)];
  if (source.known == read) return std::string(source.document);
  return fmt::format("{} ({})", source.document, words(source.known));
}

}  // namespace nook
