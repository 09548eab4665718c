// Screws set, rated, and set again with more of them where that helps.
#include "fasten/hung_piece.h"

#include <fmt/core.h>

#include <algorithm>

#include "fasten/drive_order.h"
#include "fasten/wall_load.h"
#include "fasten/wall_screws.h"

namespace nook {
namespace {

constexpr int kMore = 2;  // screws a stud beyond what the design says; then rated ones. Chosen

std::string screw_words(const Screw& screw, const Saying& say) {
  static const char* const kKinds[] = {"wood screw", "lag screw", "pocket screw",
                                       "structural screw", "drywall screw"};
  const std::string size =
      screw.diameter ? say.screw(screw.diameter->mm) : fmt::format("#{:.0f}", screw.gauge);
  return fmt::format("{} x {} {}", size, say.screw(screw.length.mm),
                     kKinds[static_cast<int>(screw.kind)]);
}

HungPiece piece_of(const Hanging& h, const WallContext& c) {
  const double middle = h.ruler.length() / 2, half = h.ruler.height() / 2;
  const Vec2 top = h.face.wall_from_face(h.ruler.at(middle, 0));
  const Vec2 bottom = h.face.wall_from_face(h.ruler.at(middle, h.ruler.height()));
  const auto end = [&](double from_end) {
    const Vec2 at = h.face.wall_from_face(h.ruler.at(from_end, half));
    return c.frame.along(at.x, at.y);
  };
  HungPiece piece;
  piece.part = h.piece.name;
  piece.near_mm = std::min(end(0), end(h.ruler.length()));
  piece.far_mm = std::max(end(0), end(h.ruler.length()));
  piece.bottom_mm = bottom.y - c.frame.floor_z(top.x);
  piece.top_mm = top.y - c.frame.floor_z(top.x);
  piece.screw = screw_words(h.fastening.screw, h.say);
  if (c.room.line_z) piece.top_from_line_mm = top.y - *c.room.line_z;
  return piece;
}

Hung with_screws(const Hanging& h, const WallContext& c, const HoleCount& count) {
  WallScrews screws = wall_screws(h, c);
  for (std::size_t i = 0; i < screws.holes.size(); ++i)
    screws.holes[i].id = fmt::format("{} {}", count.wall, count.before + i + 1);
  number_drives(screws.holes);
  Hung hung{piece_of(h, c), {}, {}, std::move(screws.untold), strength_on_wall(h, c, screws)};
  hung.piece.notes = std::move(screws.left_out);
  hung.holes = std::move(screws.holes);
  hung.unreachable = std::move(screws.unreachable);
  return hung;
}

bool carries(const Hung& hung, std::size_t holes) {
  return hung.unreachable.empty() && hung.holes.size() >= holes &&
         hung.strength.ratio.value_or(2) <= 1;
}

// The next thicker wood screw that carries the load in as many holes; 0 = none.
double heavier(const Hanging& h, const WallContext& c, std::size_t holes) {
  if (h.fastening.screw.kind != ScrewKind::wood || h.fastening.screw.gauge <= 0) return 0;
  for (const double gauge : {8.0, 10.0, 12.0, 14.0}) {
    if (gauge <= h.fastening.screw.gauge) continue;
    Fastening fastening = h.fastening;
    fastening.screw.gauge = gauge;
    const Distances distances = distances_for(fastening.screw);
    const FreeFace free = h.free.with(distances);
    const Hanging heavy{h.piece,  fastening, h.face,    h.ruler,     free,  h.services,
                        h.design, h.say,     distances, h.wallboard, h.sure};
    if (carries(with_screws(heavy, c, {}), holes)) return gauge;
  }
  return 0;
}

// What helps where more screws at its studs do not.
std::string cure_for(const Hanging& h, const WallContext& c, const Hung& asked, bool room) {
  if (const double gauge = heavier(h, c, asked.holes.size()); gauge > 0)
    return fmt::format("#{:.0f} screws in place of #{:.0f}", gauge, h.fastening.screw.gauge);
  const char* rated = *asked.strength.ratio <= kRatedMayDo ? ", use rated screws," : "";
  return fmt::format(
      "{}; hold the load at more studs (blocking, a longer piece){} or put a post under it",
      room ? "more screws beside it will not do" : "no more screws fit at its studs", rated);
}

}  // namespace

Hung hung_on(const Hanging& hanging, const WallContext& context, const HoleCount& count) {
  Hung asked = with_screws(hanging, context, count);
  const int per_stud = hanging.fastening.per_stud;
  bool room = true;
  if (asked.strength.ratio.value_or(0) <= 1) return asked;
  for (int more = 1; more <= kMore; ++more) {
    Fastening fastening = hanging.fastening;
    fastening.per_stud += more;
    Hung next = with_screws(hanging.with(fastening), context, count);
    // Each stud takes its share of them, or there is no room.
    if (next.holes.size() * per_stud < asked.holes.size() * fastening.per_stud) {
      room = more > 1;
      break;
    }
    if (next.strength.ratio.value_or(2) > 1) continue;
    next.strength.notes.push_back(fmt::format(
        "{} screws a stud for this load, where the design says {}", fastening.per_stud, per_stud));
    return next;
  }
  relieve(asked.strength, cure_for(hanging, context, asked, room), hanging.say);
  return asked;
}

}  // namespace nook
