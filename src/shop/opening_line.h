// An opening between two installed parts, as a tape held level between them would read it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "design/piece.h"
#include "room/shape.h"
#include "room/survey.h"

namespace nook {

/// Where the tape is held: level, along x or y of the room frame.
struct OpeningLine {
  int axis = 0;         // 0: along x; 1: along y
  double cross = 0;     // the other coordinate, mm: `out` of the opening
  double height = 0;    // room z
  std::string ends[2];  // parts or walls, the one at the lesser coordinate first
};

/// One room with its pieces as placed there.
struct Built {
  const std::vector<Piece>& pieces;
  const std::vector<Frame>& frames;
  const RoomShape& room;
};

/// The line of an opening: along the axis on which its two ends are furthest apart, half way up the
/// lower part where no height was said. A bare name of a repeated part means every copy of it.
/// Nothing where an end is not in the design or the room, between two walls, or where the height
/// counts from a level line that is not known.
std::optional<OpeningLine> line_of(const Opening& opening, const Built& built);

/// The length of the line between its two ends in a room, mm; nothing where it misses one.
std::optional<double> opening_in(const OpeningLine& line, const Built& built);

}  // namespace nook
