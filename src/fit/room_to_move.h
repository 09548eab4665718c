// How far a piece may come closer to what it is scribed to before something else is spoiled.
#pragma once

#include <string>
#include <vector>

#include "fit/trials.h"

namespace nook {

/// The distance until another contact of the piece's group opens too far or closes, or an edge that
/// must stay covered is not; and which of them a move by `wish` would spoil.
struct RoomToMove {
  double distance = 0;
  std::vector<std::string> spoils;
};
RoomToMove room_to_move(const Trials& trials, int joint, double wish);

}  // namespace nook
