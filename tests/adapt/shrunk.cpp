// Outlines are compared where they are in the room, as a cut on the left moves u = 0.
#include "shrunk.h"

#include <algorithm>

#include "design/piece.h"

namespace nook::test {
namespace {

double moved(const Part& a, const Part& b) {
  const Frame before = frame_of(a.place_in_room), after = frame_of(b.place_in_room);
  double most = norm(b.place_in_room.at - a.place_in_room.at);
  for (std::size_t i = 0; i < a.outline.size(); ++i)
    most = std::max(most, norm(after.room_from_piece({b.outline[i].x, b.outline[i].y, 0}) -
                               before.room_from_piece({a.outline[i].x, a.outline[i].y, 0})));
  return most;
}

Vec2 between(Vec2 from, Vec2 to, double share) {
  return from + share * (to - from);
}

void set_between(const Part& from, Part& part, double share) {
  const Vec3 a = from.place_in_room.at;
  part.place_in_room.at = a + share * (part.place_in_room.at - a);
  for (std::size_t i = 0; i < part.outline.size(); ++i)
    part.outline[i] = between(from.outline[i], part.outline[i], share);
  for (std::size_t c = 0; c < part.cutouts.size(); ++c)
    for (std::size_t i = 0; i < part.cutouts[c].outline.size(); ++i)
      part.cutouts[c].outline[i] =
          between(from.cutouts[c].outline[i], part.cutouts[c].outline[i], share);
}

}  // namespace

double changed_by(const Design& before, const Design& after, int part) {
  return moved(before.parts[part], after.parts[part]);
}

Design set_back(const Design& before, const Design& after, int part, double mm) {
  Design less = after;
  const double share = 1 - mm / changed_by(before, after, part);
  for (std::size_t p = 0; p < less.parts.size(); ++p)
    if (less.parts[p].group == less.parts[part].group)
      set_between(before.parts[p], less.parts[p], share);
  return less;
}

}  // namespace nook::test
