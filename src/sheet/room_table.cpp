// Readings in columns; residuals and statistics in millimeters.
#include "sheet/room_table.h"

#include <fmt/format.h>

#include <cmath>

#include "survey/room_report.h"

namespace nook {
namespace {

constexpr std::size_t kIdWidth = 30;

std::string decimal(const std::optional<double>& value, int digits) {
  if (!value || !std::isfinite(*value)) return "-";
  const std::string text = fmt::format("{:.{}f}", *value, digits);
  const bool zero = text.find_first_not_of("-0.") == std::string::npos;
  return zero && text.front() == '-' ? text.substr(1) : text;
}

// Its end tells readings apart.
std::string shortened(const std::string& id) {
  return id.size() <= kIdWidth ? id : "..." + id.substr(id.size() - kIdWidth + 3);
}

std::string line_of(const ReadingReport& reading) {
  const std::string w = reading.struck ? "struck" : decimal(reading.w, 2);
  return fmt::format("{:<30} {:>9} {:>9} {:>7} {:>5} {:>6} {:>7}\n", shortened(reading.id),
                     decimal(reading.value_mm, 1), decimal(reading.adjusted_mm, 1),
                     decimal(reading.residual_mm, 2), decimal(reading.redundancy, 2), w,
                     decimal(reading.smallest_slip_mm, 1));
}

}  // namespace

std::string readings_table(const RoomReport& report, const Style&) {
  std::string text = fmt::format("{:<30} {:>9} {:>9} {:>7} {:>5} {:>6} {:>7}\n", "reading (mm)",
                                 "given", "adjusted", "resid.", "r", "w", "slip");
  for (const ReadingReport& reading : report.readings) text += line_of(reading);
  if (report.dof > 0)
    text += fmt::format("chi-squared {:.1f} with {} to spare; below {:.1f} all is well\n",
                        report.chi2, report.dof, report.chi2_limit);
  text += "r: share of a slip that shows; w: beyond 3.29 suspect; slip: least that is found\n";
  if (const auto limit = w_limit_by_scatter(report))
    text += fmt::format("by the readings' own scatter (tau), w is suspect beyond {:.2f}\n", *limit);
  return text;
}

}  // namespace nook
