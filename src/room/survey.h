// The survey as read: what tape, level and stud finder said, as plain values with their places.
#pragma once

#include "base/notation.h"
#include "room/net.h"
#include "room/wall.h"

// Plan of a corner, seen from above (room frame; z up, towards the reader):
//
//        y
//        |  second wall ("right"), its base line at the corner angle from the first
//        |
//        |        out = into the room, square to a wall's base line
//        o------------------------ x   first wall ("left"); along = away from the corner
//
// height counts up from the floor at that spot, unless a reading counts from the level line.

namespace nook {

/// From the level line down to the floor (or up to the ceiling) at a spot beside a wall.
struct DropReading {
  int wall = 0;
  Length along, out;
  bool from_right = false;
  Readings drop;
  Place place;
};
struct Squash {
  double load_n = 0;
  Length on[2];  // the block stood on
  Length by;
  Place place;
};
struct Covering {
  std::string kind;  // carpet, oak, ...
  Length thickness;
  std::optional<Length> tack_strip;
};
struct Floor {
  std::vector<DropReading> down;
  std::optional<Covering> covering;
  std::vector<Squash> squash;
  bool heated = false;
};

struct Opening {
  std::string between[2];
  Length out;
  std::optional<Height> height;
  Readings is;
  Place place;
};
struct Installed {
  std::vector<std::string> parts;
  std::vector<Opening> openings;
  Place place;
};
struct Doorway {
  std::string name;
  Length width, height;
  std::optional<Length> leaf;
  Place place;
};
struct HallTurn {
  std::string name;
  Length from, to, height;
  Place place;
};

/// The whole of room.toml.
struct Survey {
  std::string title;
  Unit units = Unit::inch;        // of bare numbers in the file
  std::optional<Rounding> asked;  // how answers are to say lengths; left out: as the file does
  Tape tape;
  SpiritLevel level;
  LevelLine level_line = LevelLine::laser;
  Flatness flatness;
  std::vector<Wall> walls;      // from left to right as one faces them
  std::vector<Corner> corners;  // one for each two neighboring walls, left to right
  std::vector<Across> across;
  std::vector<std::string> marks;
  std::vector<Span> spans;
  Floor floor;
  std::vector<DropReading> ceiling;
  std::vector<Installed> installed;
  std::vector<Doorway> doorways;
  std::vector<HallTurn> turns;
  std::vector<Mention>
      parts_named;  // parts of the design (or "left wall") that openings lie between

  /// How answers say lengths: as asked for, else in the file's own units.
  Rounding said() const { return asked.value_or(usual_rounding(units)); }
};

}  // namespace nook
