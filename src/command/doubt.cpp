// The reading's own residual tells what the others foretell.
#include "command/doubt.h"

#include <cmath>
#include <set>

#include "survey/adjustment.h"

namespace nook {
namespace {

// Baarda 1968: |w| over 3.29 at alpha .001; below a redundancy of .1 a reading is hardly checked.
constexpr double kLimit = 3.29, kChecked = 0.1;

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
  const std::set<std::string> known = ids_of(adjust(before).report());
  const Adjustment adjustment = adjust(after);
  std::optional<Doubt> worst;
  double limit = kLimit;
  for (const ReadingReport& reading : adjustment.report().readings) {
    if (reading.struck || known.count(reading.id) || !reading.w || is_mark(reading.id)) continue;
    if (reading.redundancy < kChecked || std::abs(*reading.w) <= limit) continue;
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
