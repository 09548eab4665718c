// Numbers as the job's units say them.
#include "fasten/said.h"

#include <fmt/core.h>

#include <cmath>

namespace nook {
namespace {

constexpr double kExact = 1e-6;  // steps; a length on its mark stays there

}  // namespace

std::string Saying::length(double mm) const {
  return with_unit(millimetres(mm), rounding);
}

std::string Saying::at_least(double mm) const {
  return length(std::ceil(mm / rounding.step.mm - kExact) * rounding.step.mm);
}

std::string Saying::at_most(double mm) const {
  return length(std::floor(mm / rounding.step.mm + kExact) * rounding.step.mm);
}

std::string Saying::screw(double mm) const {
  if (rounding.unit == Unit::inch) return length(mm);
  constexpr double kWhole = .05;  // mm from a whole one. Chosen
  const double step = std::abs(mm - std::round(mm)) < kWhole ? 1 : .1;
  return with_unit(millimetres(mm), {Unit::mm, millimetres(step)});
}

std::string Saying::load(double newtons) const {
  const bool pounds = rounding.unit == Unit::inch;
  const double value = std::round(newtons / (pounds ? kNewtonsPerPound : kNewtonsPerKilogram));
  return fmt::format("{:.0f} {}", value == 0 ? 0 : value, pounds ? "lb" : "kg");
}

namespace {

// From one sold length to the next.
double step_at(double mm, Unit unit) {
  if (unit == Unit::inch) return kMillimetresPerInch / (mm <= 3 * kMillimetresPerInch ? 4 : 2);
  return mm <= 60 ? 5 : 10;
}

}  // namespace

double Saying::sold_from(double mm) const {
  const double step = step_at(mm, rounding.unit);
  return std::ceil(mm / step - 1e-9) * step;
}

double Saying::sold_up_to(double mm) const {
  const double step = step_at(mm, rounding.unit);
  return std::floor(mm / step + 1e-9) * step;
}

}  // namespace nook
