// The reading's own residual tells what the others foretell.
#include "command/doubt.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "survey/adjustment.h"
#include "survey/room_report.h"

namespace nook {
namespace {

constexpr double kUsualFlatness = 2;  // mm. Chosen

std::set<std::string> ids_of(const RoomReport& report) {
  std::set<std::string> ids;
  for (const ReadingReport& reading : report.readings) ids.insert(reading.id);
  return ids;
}

// Marks are laid off as the question says; what was read is the tape between them.
bool is_mark(const std::string& id) {
  return id.ends_with(".first") || id.ends_with(".second");
}

// Without the reading itself: residual over redundancy (Baarda 1968); its sd likewise.
Measured foretold(const ReadingReport& reading) {
  const double share = reading.redundancy;
  return {reading.value_mm + reading.residual_mm / share,
          reading.sd_mm * std::sqrt((1 - share) / share)};
}

// A diagonal's straight tape, and what it would be in a square corner.
struct StraightTape {
  Reading& reading;
  double square_mm;
};
std::optional<StraightTape> diagonal_of(Survey& survey, const std::string& id) {
  for (Corner& corner : survey.corners)
    for (Diagonal& diagonal : corner.diagonals)
      for (Reading& reading : diagonal.straight)
        if (reading.id == id)
          return StraightTape{reading,
                              std::hypot(diagonal.first.value.mm, diagonal.second.value.mm)};
  return {};
}

constexpr int kRounds = 3;  // from square on, a corner of 80 degrees stands after two. Chosen

// A gross diagonal turns the walls, and what is foretold from their slopes is then far off:
// foretold as if it had read what a square corner gives, then what the others say.
Measured foretold_diagonal(Survey& judged, const std::string& id, const StraightTape& tape) {
  Measured expected{tape.square_mm, 0};
  for (int round = 0; round < kRounds; ++round) {
    tape.reading.value.mm = expected.value;
    const Adjustment adjustment = adjust(judged);
    for (const ReadingReport& reading : adjustment.report().readings)
      if (reading.id == id) expected = foretold(reading);
  }
  return expected;
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
  std::string id;
  double limit = w_limit();
  for (const ReadingReport& reading : adjustment.report().readings) {
    if (reading.struck || known.count(reading.id) || !reading.w || is_mark(reading.id)) continue;
    if (std::abs(*reading.w) <= limit) continue;
    limit = std::abs(*reading.w);
    worst = Doubt{reading.value_mm, foretold(reading)};
    id = reading.id;
  }
  if (const auto tape = diagonal_of(judged, id))
    worst->expected_mm = foretold_diagonal(judged, id, *tape);
  return worst;
}

}  // namespace nook
