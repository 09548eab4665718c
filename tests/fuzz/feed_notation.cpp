// Readings of any bytes: a figure in its range, or a fault within the text.
#include <cmath>

#include "base/invariant.h"
#include "base/quantity.h"
#include "fuzz/targets.h"

namespace nook {
namespace {

void check(const NotationFault& fault, std::string_view text) {
  require(!fault.what.empty() && !fault.code.empty(), "a fault says what is wrong");
  require(fault.at >= 0 && fault.width >= 1, "a fault has a place");
  require(fault.at <= static_cast<int>(text.size()), "a fault stands in its text");
}

void check(Length value, Unit unit) {
  require(std::isfinite(value.mm) && std::abs(value.mm) <= 1.001 * kLongestMm,
          "nothing is over 100 km");
  const Rounding rounding = usual_rounding(unit);
  const std::string printed = written(value, rounding);
  const auto again = read_length(printed, unit, rounding.step);
  require(again.has_value(), "what is printed can be read");
  require(std::abs(again->value.mm - value.mm) <= rounding.step.mm / 2 + 1e-6,
          "what is printed is what was read, rounded");
  require(written(again->value, rounding) == printed, "what is printed reads back to the same");
}

template <class Read>
void check_figure(Read read, std::string_view text) {
  const auto figure = read(text);
  if (!figure) check(figure.error(), text);
}

void feed_length(std::string_view text, Unit unit) {
  const auto read = read_length(text, unit, usual_rounding(unit).step);
  read ? check(read->value, unit) : check(read.error(), text);
}

}  // namespace

void feed_notation(std::string_view bytes) {
  if (bytes.empty()) return;
  const std::string_view text = bytes.substr(1);
  switch (static_cast<unsigned char>(bytes[0]) % 8) {
    case 0:
      return check_figure(read_slope, text);
    case 1:
      return check_figure(read_load, text);
    case 2:
      return check_figure(read_density, text);
    case 3:
      return check_figure(read_angle, text);
    case 4:
      return feed_length(text, Unit::mm);
    case 5:
      return feed_length(text, Unit::cm);
    default:
      return feed_length(text, Unit::inch);
  }
}

}  // namespace nook
