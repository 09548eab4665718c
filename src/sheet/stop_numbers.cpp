// Level, diagonal and gap in words.
#include "sheet/stop_numbers.h"

#include <fmt/format.h>

#include "base/measured.h"
#include "design/fitting.h"
#include "design/side.h"
#include "sheet/fit_words.h"
#include "sheet/floor_spot.h"
#include "sheet/piece_view.h"

namespace nook {
namespace {

std::string level_words(const SheetJob& job) {
  if (!job.scene.room.line_z) return "";
  const FloorSpot spot = high_spot(job.scene);
  return fmt::format("LEVEL: line {} above the high spot, {}.",
                     job.said(*job.scene.room.line_z - spot.z), said(spot, job.scene));
}

// Where a contact is open widest, in the piece frame, and how far along its edge.
struct WidestSpot {
  const ContactFit* contact = nullptr;
  double gap = 0, along = 0;
  Vec2 at;

  // What is as small as its give or take proves nothing.
  bool tells() const { return gap > kTwoSided95 * contact->gap_sd; }
};

WidestSpot widest_on_face(const ContactFit& contact) {
  WidestSpot widest{&contact, 0, 0, {}};
  for (const FieldPoint& p : contact.field)
    if (p.gap > widest.gap) widest = {&contact, p.gap, p.u, {p.u, p.v}};
  return widest;
}

WidestSpot widest_of(const SheetJob& job, const ContactFit& contact) {
  if (std::holds_alternative<PieceFace>(contact.how->edge)) return widest_on_face(contact);
  WidestSpot widest{&contact, 0, 0, {}};
  const Polygon& outline = job.fit().pieces[contact.piece].drawn->outline;
  for (const GapPoint& p : contact.line)
    if (p.gap > widest.gap)
      widest = {&contact, p.gap, p.at, spot_of(outline, contact.how->edge, p.at).at};
  return widest;
}

// Along the edge, unless that is its height, and the height above the floor.
std::string spot_words(const SheetJob& job, const WidestSpot& spot) {
  const Frame& frame = job.fit().frames[spot.contact->piece];
  const std::string up = job.said(frame.room_from_piece({spot.at.x, spot.at.y, 0}).z) + " up";
  const EdgeSide* side = std::get_if<EdgeSide>(&spot.contact->how->edge);
  const bool face = std::holds_alternative<PieceFace>(spot.contact->how->edge);
  constexpr double kPlumb = 0.99;  // cosine. Chosen
  if (side && upright(*side) && frame.v.z > kPlumb) return up;
  if (face || (side && !upright(*side))) return job.said(spot.along) + " from its left end, " + up;
  return job.said(spot.along) + (side ? " from its bottom edge, " : " along it, ") + up;
}

// Of the contacts at this wall whose gap proves something and stays as it is, the widest.
WidestSpot telling(const SheetJob& job, const std::string& wall) {
  WidestSpot best;
  for (const ContactFit& c : job.fit().contacts) {
    if (wall_named(c.meets) != wall || c.line.empty() || !c.meets_anything) continue;
    if (is_cut_to_fit(c.how->by)) continue;
    const WidestSpot next = widest_of(job, c);
    if (next.tells() && next.gap > best.gap) best = next;
  }
  return best;
}

std::string gap_words(const SheetJob& job, const std::string& wall) {
  const WidestSpot spot = telling(job, wall);
  if (!spot.contact) return "";
  return fmt::format("GAP: {}: {} at {}{}.", contact_place(*spot.contact), job.said(spot.gap),
                     spot_words(job, spot), job.about(spot.contact->gap_sd));
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
