// Prints a length as it is said on site, so that it reads back to the same value.
#include <fmt/format.h>

#include <cmath>
#include <numeric>

#include "base/invariant.h"
#include "base/notation.h"

namespace nook {
namespace {

// A length as a count of steps: sign, and the count without it.
struct Count {
  bool negative = false;
  long long steps = 0;
};
Count count(Length value, Length step) {
  require(step.mm > 0, "a rounding step is above 0");
  const double steps = std::round(std::abs(value.mm) / step.mm);
  require(steps < 1e15, "a printed length is finite");
  return {value.mm < 0 && steps > 0, static_cast<long long>(steps)};
}

// How many steps make an inch; 0 where they do not make one exactly, or the step is no rule's.
long long steps_an_inch(Length step) {
  const double steps = kMillimetresPerInch / step.mm;
  const double whole = std::round(steps);
  const bool power_of_two = std::exp2(std::round(std::log2(whole))) == whole;
  return std::abs(steps - whole) < 1e-9 * whole && power_of_two ? static_cast<long long>(whole) : 0;
}

std::string fraction(long long steps, long long an_inch) {
  const long long whole = steps / an_inch, rest = steps % an_inch;
  const long long common = std::gcd(rest, an_inch);
  if (rest == 0) return std::to_string(whole);
  const std::string part = fmt::format("{}/{}", rest / common, an_inch / common);
  return whole == 0 ? part : fmt::format("{} {}", whole, part);
}

// As few decimals as show every multiple of the step; at most six.
int decimals(double step) {
  int digits = 0;
  for (double scaled = step; digits < 6 && std::abs(scaled - std::round(scaled)) > 1e-9 * scaled;
       scaled *= 10)
    ++digits;
  return digits;
}

const char* sign_of(Unit unit) {
  return unit == Unit::inch ? "\"" : unit == Unit::cm ? " cm" : " mm";
}

}  // namespace

Rounding usual_rounding(Unit unit) {
  return {unit, unit == Unit::inch ? inches(1.0 / 16) : millimetres(1)};
}

std::string written(Length value, Rounding rounding) {
  const Count found = count(value, rounding.step);
  const std::string minus = found.negative ? "-" : "";
  const long long an_inch = rounding.unit == Unit::inch ? steps_an_inch(rounding.step) : 0;
  if (an_inch > 0) return minus + fraction(found.steps, an_inch);
  if (found.steps == 0) return "0";
  const double step = rounding.step.mm / millimetres_in(rounding.unit);
  return fmt::format("{}{:.{}f}", minus, static_cast<double>(found.steps) * step, decimals(step));
}

std::string with_unit(Length value, Rounding rounding) {
  return written(value, rounding) + sign_of(rounding.unit);
}

std::string give_or_take(Length value, Rounding rounding) {
  // Rounded up: a plus-or-minus must not promise more than is known.
  const double steps = std::ceil(std::abs(value.mm) / rounding.step.mm - 1e-9);
  const bool under = std::abs(value.mm) < rounding.step.mm / 2;
  const Length shown = (under ? 1 : steps) * rounding.step;
  return (under ? "under " : "") + with_unit(shown, rounding);
}

}  // namespace nook
