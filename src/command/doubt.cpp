// The reading's own residual tells what the others foretell.
#include "command/doubt.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "survey/adjustment.h"

namespace nook {
namespace {

constexpr double kUsualFlatness = 2;  // mm. Chosen
constexpr double kLimit = 3.29;       // of |w|, alpha .001 (Baarda 1968)

std::set<std::string> ids_of(const RoomReport& report) {
  std::set<std::string> ids;
  for (const ReadingReport& reading : report.readings) ids.insert(reading.id);
  return ids;
}

// Marks are laid off as the question says; what was read is the tape between them.
bool is_mark(const std::string& id) {
  return id.ends_with(".first") || id.ends_with(".second");
}

}  // namespace

std::optional<Doubt> doubt(const Survey& before, const Survey& after) {
  const RoomReport earlier = adjust(before).report();
  const std::set<std::string> known = ids_of(earlier);
  // Walls as flat as the earlier readings have them: a slip must not make them look rougher.
  Survey judged = after;
  // Few readings make them look flatter than walls are.
  if (!after.flatness.sd)
    judged.flatness.sd = Length{std::max(earlier.flatness_sd_mm, kUsualFlatness)};
  const Adjustment adjustment = adjust(judged);
  std::optional<Doubt> worst;
  double limit = kLimit;
  for (const ReadingReport& reading : adjustment.report().readings) {
    if (reading.struck || known.count(reading.id) || !reading.w || is_mark(reading.id)) continue;
    if (std::abs(*reading.w) <= limit) continue;
    limit = std::abs(*reading.w);
    // Without the reading itself: residual over redundancy (Baarda 1968); its sd likewise.
    const double share = reading.redundancy;
    worst = Doubt{reading.value_mm,
                  {reading.value_mm + reading.residual_mm / share,
                   reading.sd_mm * std::sqrt((1 - share) / share)}};
  }
  return worst;
}

}  // namespace nook
