// Groups in the order they go in, and what each may do: where it starts, which ways it is held.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "fit/joint.h"

namespace nook {

/// Where a group's height comes from.
enum class HeightRule { level_line, floor, ceiling, rests };

/// Pieces that move together.
struct Assembly {
  std::string name;
  std::vector<int> pieces;
  std::vector<int> joints;            // of its pieces, indices into the list of joints
  std::optional<int> start_wall;      // it starts where this wall is
  bool turns_with_wall = false;       // and turned with it: it lies along it and may turn
  std::vector<std::string> tight_to;  // in order
  std::optional<int> parallel_to;     // a wall
  std::optional<int> along_piece;     // or a piece: parallel to it as drawn
  HeightRule height = HeightRule::level_line;
  std::vector<int> feet;         // pieces that stand; with HeightRule::floor
  double above_floor = 0;        // height of the lowest foot that is to be kept
  std::optional<bool> may_turn;  // as the file says
};

/// All groups, first in first. Needs the joints only for their list.
std::vector<Assembly> assemblies_of(const Scene& scene, const Site& site,
                                    const std::vector<Joint>& joints);

/// How far a wall of the room is turned from where it is drawn (a square corner), radians.
double turn_of_wall(const RoomShape& room, int wall, int first_wall);
/// Where the group stands before it is pushed home: as drawn, or moved with its wall and, where
/// `turned`, turned with it about the corner that its readings count from. `first_wall`: that of
/// the design's corner.
Motion start_motion(const Assembly& group, const RoomShape& room, int first_wall, bool turned);

}  // namespace nook
