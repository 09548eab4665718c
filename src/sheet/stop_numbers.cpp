// Level, diagonal and gap in words.
#include "sheet/stop_numbers.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/measured.h"
#include "sheet/fit_words.h"
#include "sheet/floor_spot.h"

namespace nook {
namespace {

std::string level_words(const SheetJob& job) {
  if (!job.scene.room.line_z) return "";
  const FloorSpot spot = high_spot(job.scene);
  return fmt::format("LEVEL: line {} above the high spot, {}.",
                     job.said(*job.scene.room.line_z - spot.z), said(spot, job.scene));
}

// Where along an edge its gap is widest, in words.
std::string spot_words(const SheetJob& job, const ContactFit& contact, double at) {
  const Frame& frame = job.fit().frames[contact.piece];
  const EdgeSide* side = std::get_if<EdgeSide>(&contact.how->edge);
  if (!side) return job.said(at) + " along it";
  const bool upright = *side == EdgeSide::left || *side == EdgeSide::right;
  if (!upright) return job.said(at) + " from its left end";
  return job.said(at) + (frame.v.z > 0.99 ? " up" : " from its bottom edge");
}

// The contact at this wall whose gap says most: the widest.
const ContactFit* telling(const SheetJob& job, const std::string& wall) {
  const ContactFit* best = nullptr;
  for (const ContactFit& c : job.fit().contacts) {
    if (wall_named(c.meets) != wall || c.line.empty() || !c.meets_anything) continue;
    if (!best || c.gap.most > best->gap.most) best = &c;
  }
  return best;
}

std::string gap_words(const SheetJob& job, const std::string& wall) {
  const ContactFit* contact = telling(job, wall);
  if (!contact) return "";
  const auto widest =
      std::max_element(contact->line.begin(), contact->line.end(),
                       [](const GapPoint& a, const GapPoint& b) { return a.gap < b.gap; });
  return fmt::format("GAP: {}: {} at {}{}.", contact_place(*contact),
                     job.said(std::max(0.0, widest->gap)), spot_words(job, *contact, widest->at),
                     job.about(widest->sd));
}

}  // namespace

std::string diagonal_words(const SheetJob& job) {
  if (!job.proof.value) return "";
  return fmt::format("DIAGONAL: {}: {}{}.", marks_of(job.proof, job.style.rounding),
                     job.said(job.proof.value->value), job.about(job.proof.tape_sd));
}

std::vector<std::string> stop_numbers(const SheetJob& job, int wall) {
  std::vector<std::string> numbers{level_words(job), diagonal_words(job),
                                   gap_words(job, job.scene.room.walls[wall].name)};
  std::erase(numbers, "");
  return numbers;
}

std::string SheetJob::about(double sd) const {
  return sd > 0 ? ", give or take " + give_or_take(millimetres(kTwoSided95 * sd), style.rounding)
                : "";
}

}  // namespace nook
