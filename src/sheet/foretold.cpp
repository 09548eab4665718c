// A straight tape between two marks, foretold, in words and as JSON.
#include "sheet/foretold.h"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "sheet/wrap.h"

namespace nook {
namespace {

std::string end_of(const Foretold& foretold, int end, const Rounding& rounding) {
  const std::string& name = foretold.ends[end];
  if (!foretold.along[end]) return fmt::format("'{}'", name);
  return fmt::format("{} along the {} wall", with_unit(*foretold.along[end], rounding), name);
}

}  // namespace

std::string marks_of(const Foretold& foretold, const Rounding& rounding) {
  const std::string up =
      foretold.height ? fmt::format(", both {} up", with_unit(*foretold.height, rounding)) : "";
  return fmt::format("from {} to {}{}", end_of(foretold, 0, rounding),
                     end_of(foretold, 1, rounding), up);
}

std::string foretold_text(const Foretold& foretold, const Style& style) {
  const Rounding& rounding = style.rounding;
  const std::string marks = marks_of(foretold, rounding);
  if (!foretold.value) {
    return wrapped(fmt::format("{}: {}", marks, foretold.why_not), kPageWidth, "Straight ");
  }
  const double exact = kTwoSided95 * foretold.value->sd, taped = kTwoSided95 * foretold.tape_sd;
  return wrapped(
      fmt::format("{}: {}, give or take {} at exact marks. A tape between marks laid off by hand "
                  "reads that, give or take {}.",
                  marks, with_unit(millimetres(foretold.value->value), rounding),
                  give_or_take(millimetres(exact), rounding),
                  give_or_take(millimetres(taped), rounding)),
      kPageWidth, "Straight ");
}

Json foretold_json(const Foretold& foretold) {
  if (!foretold.value) {
    return {{"value_mm", nullptr}, {"sd_mm", nullptr}, {"missing", foretold.why_not}};
  }
  return {{"value_mm", foretold.value->value},
          {"sd_mm", foretold.value->sd},
          {"tape_sd_mm", foretold.tape_sd}};
}

}  // namespace nook
