// How an answer is to be written, from the options of the command line.
#include "command/style.h"

#include <fmt/format.h>
#include <unistd.h>

#include <charconv>
#include <cmath>
#include <cstdlib>

namespace nook {
namespace {

Unit unit_given(const Request& request, Unit fallback) {
  const std::string text = request.value("--units", "");
  if (text.empty()) return fallback;
  if (text == "inch") return Unit::inch;
  if (text == "mm") return Unit::mm;
  if (text == "cm") return Unit::cm;
  throw UsageFault(fmt::format("'{}' is no unit", text), "units", "one of inch, mm, cm");
}

// Chosen: the marks of an inch tape, 1 in halved up to six times.
bool on_inch_tape(Length step) {
  int power = 0;
  const double inches = step.mm / kMillimetresPerInch;
  return std::frexp(inches, &power) == 0.5 && power >= -5 && power <= 1;
}

void refuse_foreign_step(const std::string& text, Length step, Unit unit) {
  const auto read = read_length(text, unit, usual_rounding(unit).step);
  const bool inch = unit == Unit::inch;
  if (read->metric == inch || (inch && !on_inch_tape(step))) {
    throw UsageFault(fmt::format("--round: '{}' is no step of a page in {}", text,
                                 inch               ? "inches"
                                 : unit == Unit::mm ? "mm"
                                                    : "cm"),
                     "round",
                     inch ? "one of 1, 1/2, 1/4, 1/8, 1/16, 1/32, 1/64 in" : "like 1 mm or 0.5 cm");
  }
}

Rounding rounding_given(const Request& request, Unit unit) {
  Rounding rounding = usual_rounding(unit);
  if (!request.has("--round")) return rounding;
  rounding.step = length_given("--round", request.value("--round", ""), unit);
  // Chosen: finer is not readable on any tape, coarser is no measure.
  if (rounding.step < millimetres(0.01) || rounding.step > millimetres(100)) {
    throw UsageFault("--round is out of range", "round", "from 0.01 mm to 100 mm");
  }
  refuse_foreign_step(request.value("--round", ""), rounding.step, unit);
  return rounding;
}

double chance_given(const Request& request) {
  const std::string text = request.value("--sure", "0.95");
  double chance = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), chance);
  const bool whole = fault == std::errc() && end == text.data() + text.size();
  // At .5 or below something could be sure to fit and sure not to.
  if (!whole || !(chance > 0.5 && chance < 1)) {
    throw UsageFault(fmt::format("'{}' is no chance to be sure with", text), "sure",
                     "a number over 0.5 and under 1, like 0.95");
  }
  return chance;
}

bool color_given(const Request& request) {
  const std::string when = request.value("--color", "auto");
  if (when == "always") return true;
  if (when == "never") return false;
  if (when != "auto") {
    throw UsageFault(fmt::format("'{}' is no way to color", when), "color",
                     "one of auto, always, never");
  }
  const char* no_color = std::getenv("NO_COLOR");
  const char* terminal = std::getenv("TERM");
  const bool dumb = !terminal || std::string_view(terminal) == "dumb";
  return isatty(STDOUT_FILENO) && !dumb && !(no_color && *no_color);
}

}  // namespace

Length length_given(const std::string& option, const std::string& text, Unit unit) {
  const auto read = read_length(text, unit, usual_rounding(unit).step);
  if (!read) {
    throw UsageFault(fmt::format("{}: '{}': {}", option, text, read.error().what),
                     read.error().code, read.error().help);
  }
  return read->value;
}

Style style_of(const Request& request, Survey& survey) {
  Style style;
  style.rounding = rounding_given(request, unit_given(request, survey.units));
  survey.asked = style.rounding;
  style.sure = chance_given(request);
  style.color = color_given(request) && !request.has("--json");
  style.quiet = request.has("--quiet");
  style.verbose = request.has("--verbose");
  return style;
}

}  // namespace nook
