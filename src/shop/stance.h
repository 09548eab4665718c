// Pieces as they stand or hang in the room, and a figure of the room taken over its draws.
#pragma once

#include <functional>
#include <vector>

#include "base/measured.h"
#include "room/shape.h"
#include "shop/box.h"

namespace nook {

/// A room and what its readings leave open.
struct KnownRoom {
  const RoomShape& room;
  const std::vector<RoomShape>& draws;
};

/// Draws that a figure is taken over at most: its sd is then known to 1 in 14. Chosen.
inline constexpr size_t kFigureDraws = 100;

/// A figure of the room: its value there, its sd over the draws.
Measured over_draws(const KnownRoom& known, const std::function<double(const RoomShape&)>& figure);

/// What is carried as one, in place: a single piece or a group joined.
struct Stance {
  std::string name;
  std::vector<Vec3> corners;  // of all its pieces, room frame
  std::vector<CarriedPiece> pieces;
};
Stance stance_of(std::string name, std::vector<CarriedPiece> pieces);

}  // namespace nook
