// Readers for what is not a length: a number of the trade followed by one of a few units.
#include "base/quantity.h"

#include <cmath>
#include <string>
#include <vector>

#include "base/number_text.h"

namespace nook {
namespace {

// Exact by definition (international pound and yard agreement, 1959; standard gravity, CGPM 1901).
constexpr double kKilogramsPerPound = 0.45359237;
constexpr double kStandardGravity = 9.80665;
constexpr double kCubicMetresPerCubicFoot = 0.3048 * 0.3048 * 0.3048;
// Beyond it a figure is a slip, whatever its unit (chosen).
constexpr double kGreatest = 1e9;

struct QuantityUnit {
  std::string_view text;
  double factor;
};
struct QuantityKind {
  const char* name;
  const char* code;
  std::vector<QuantityUnit> units;  // none: bare
  const char* help;
};

using Read = tl::expected<double, NotationFault>;

// The tokens from here to the end as one word without spaces, raised digits as plain ones.
std::string rest(TokenWalk& walk) {
  std::string text;
  while (!walk.done()) {
    const Token token = walk.next();
    if (token.kind == Token::Kind::slash)
      text += '/';
    else if (token.kind == Token::Kind::number || token.kind == Token::Kind::raised)
      text += std::to_string(static_cast<int>(std::min(token.value, 99.0)));
    else
      text += token.text.empty() ? "?" : token.text;
  }
  return text;
}

Read with_unit(TokenWalk& walk, double value, const QuantityKind& kind) {
  const Token first = walk.peek();
  const std::string unit = rest(walk);
  if (kind.units.empty() && unit.empty()) return value;
  for (const QuantityUnit& known : kind.units)
    if (known.text == unit) return value * known.factor;
  const int width = std::max(1, walk.peek().at - first.at);
  const bool missing = unit.empty();
  return tl::unexpected(
      NotationFault{missing ? 0 : first.at, missing ? first.at : width,
                    std::string(kind.name) + (missing              ? " without its unit"
                                              : kind.units.empty() ? " is a bare number"
                                                                   : " in an unknown unit"),
                    kind.code, kind.help});
}

Read read(std::string_view text, const QuantityKind& kind) {
  auto all = tokens(text);
  if (!all) return tl::unexpected(all.error());
  for (const Token& token : *all)
    if (token.kind == Token::Kind::comma)
      return tl::unexpected(
          fault_at(token, "a comma in a number", "decimal-comma", "decimals take a point: 0.5"));
  TokenWalk walk(std::move(*all));
  const bool minus = walk.peek().kind == Token::Kind::minus;
  if (minus || walk.peek().kind == Token::Kind::plus) walk.next();
  const auto number = walk.mixed_number();
  if (!number) {
    NotationFault fault = number.error();
    fault.help = kind.help;
    return tl::unexpected(fault);
  }
  const Read value = with_unit(walk, minus ? -number->value : number->value, kind);
  if (value && !(std::abs(*value) <= kGreatest))
    return tl::unexpected(NotationFault{number->at, number->width, "this figure is absurd",
                                        "absurd-value", "check the figure and its unit"});
  return value;
}

}  // namespace

tl::expected<double, NotationFault> read_slope(std::string_view text) {
  static const QuantityKind kSlope = {"a slope",
                                      "unknown-unit",
                                      {{"mm/m", 1e-3}, {"in/ft", 1.0 / 12}},
                                      "write it like 0.5 mm/m or 1/16 in/ft"};
  return read(text, kSlope);
}

tl::expected<double, NotationFault> read_load(std::string_view text) {
  static const QuantityKind kLoad = {
      "a load",
      "unknown-unit",
      {{"lb", kKilogramsPerPound * kStandardGravity}, {"kg", kStandardGravity}, {"n", 1}},
      "write it like 180 lb, 80 kg or 800 N"};
  return read(text, kLoad);
}

tl::expected<double, NotationFault> read_density(std::string_view text) {
  static const QuantityKind kDensity = {
      "a density",
      "unknown-unit",
      {{"lb/ft3", kKilogramsPerPound / kCubicMetresPerCubicFoot}, {"kg/m3", 1}},
      "write it like 36 lb/ft3 or 600 kg/m3"};
  return read(text, kDensity);
}

tl::expected<Angle, NotationFault> read_angle(std::string_view text) {
  static const QuantityKind kAngle = {
      "an angle", "not-an-angle", {}, "write degrees without a unit, like 91.3"};
  const Read value = read(text, kAngle);
  if (!value) return tl::unexpected(value.error());
  if (std::abs(*value) > 360)
    return tl::unexpected(NotationFault{0, static_cast<int>(text.size()),
                                        "an angle of more than a full turn", "absurd-value",
                                        "write degrees without a unit, like 91.3"});
  return degrees(*value);
}

}  // namespace nook
