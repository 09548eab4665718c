// Contacts judged: gaps over the whole edge, room by room, and what closes them.
#pragma once

#include "fit/fit_answer.h"
#include "fit/trials.h"

namespace nook {

/// One entry for each joint, in their order; `all_hold` is joined with what each of them holds.
std::vector<ContactFit> find_contacts(const Trials& trials, double sure, Holds& all_hold);

/// How far the piece of a joint may come closer to what it meets until another contact of its group
/// opens too far or closes, and which ones a move by `wish` would spoil.
struct RoomToMove {
  double distance = 0;
  std::vector<std::string> spoils;
};
RoomToMove room_to_move(const Trials& trials, int joint, double wish);

}  // namespace nook
