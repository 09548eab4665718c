// The widest columns give way first.
#include "sheet/table_widths.h"

#include <algorithm>
#include <numeric>

#include "sheet/text_width.h"

namespace nook {
namespace {

constexpr double kHair = 0.05;  // mm: what rounding takes must not break a cell's words

}  // namespace

std::vector<double> column_widths(const SheetTable& table, double size, double width) {
  std::vector<double> wanted;
  for (std::size_t c = 0; c < table.heads.size(); ++c) {
    double most = width_of(table.heads[c], size, true);
    for (const std::vector<std::string>& row : table.rows)
      most = std::max(most, width_of(row[c], size, true));
    wanted.push_back(most + kCellGap * size + kHair);
  }
  // The cap under which all columns fit: between 0 and the widest wish.
  const auto total = [&](double cap) {
    return std::accumulate(wanted.begin(), wanted.end(), 0.0,
                           [&](double sum, double w) { return sum + std::min(w, cap); });
  };
  double low = 0, high = *std::max_element(wanted.begin(), wanted.end());
  if (total(high) > width) {
    for (int i = 0; i < 60; ++i) (total((low + high) / 2) > width ? high : low) = (low + high) / 2;
    for (double& w : wanted) w = std::min(w, low);
  }
  return wanted;
}

}  // namespace nook
