// Sentences put together.
#include "safety/words.h"

#include "base/invariant.h"
#include "fasten/said.h"

namespace nook {
namespace {

struct Speaker {
  Rounding rounding;

  std::string operator()(Measured m) const {
    std::string text = with_unit({m.value}, rounding);
    if (m.sd > 0) text += " (give or take " + give_or_take({kTwoSided95 * m.sd}, rounding) + ")";
    return text;
  }
  std::string operator()(Load load) const { return Saying{rounding.unit}.load(load.newtons); }
  std::string operator()(Of which) const { return published(limit(which), rounding); }
  std::string operator()(const std::string& text) const { return text; }
};

}  // namespace

std::string spoken(const Words& words, Rounding rounding) {
  std::string text;
  std::size_t from = 0;
  for (const Said& said : words.said) {
    const std::size_t hole = words.pattern.find("{}", from);
    require(hole != std::string::npos, "a sentence has room for everything it says");
    text += words.pattern.substr(from, hole - from) + std::visit(Speaker{rounding}, said);
    from = hole + 2;
  }
  require(words.pattern.find("{}", from) == std::string::npos,
          "a sentence says all it has room for");
  return text + words.pattern.substr(from);
}

std::string joined(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) text += i + 1 == names.size() ? " and " : ", ";
    text += names[i];
  }
  return text;
}

}  // namespace nook
