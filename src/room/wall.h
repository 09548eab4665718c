// A wall as read: how it stands, its baseboard, its studs and what is in its way.
#pragma once

#include <algorithm>

#include "room/reading.h"
#include "room/studs.h"

namespace nook {

/// A level held plumb against a wall: it touches at one end and gaps at the other.
struct LevelReading {
  Length at;
  bool from_right = false;  // `at` counts from the wall's right corner
  Height from, to;
  Readings gap;
  bool gap_at_top = true;
  Place place;
};
/// A reading [position, distance]; what the position means stands with its list.
struct Station {
  Length at;
  Height height;  // plumb lines: position is a height
  Readings reading;
  Place place;
};
/// A straight stick laid level on a wall: the gap under it at each distance from the corner.
struct StraightedgeReading {
  Height height;
  bool from_right = false;
  std::vector<Station> gaps;
  Place place;
};
/// A plumb line or vertical laser standing `at` on the wall (at its lowest reading).
struct PlumbReading {
  Length at;
  bool from_right = false;
  std::vector<Station> line;  // each: height, line to wall
  Place place;
};
/// A string or level laser along the wall at one height.
struct StringReading {
  Height height;
  bool from_right = false;
  std::vector<Station> line;  // each: from the corner, string to wall
  Place place;
};

/// A point of a profile: this high above the floor, this far out of the wall.
struct ProfilePoint {
  Length height, out;
};
struct Baseboard {
  Length height, thickness;
  Length shoe;                        // how far the shoe stands out of the board; 0 = none
  std::vector<ProfilePoint> profile;  // empty = square, thickness all the way up
  Length starts;
  std::optional<Length> ends;  // left out = to the end of the wall
  bool removable = false;
  Place place;
};

enum class ObstacleKind {
  outlet,
  switch_box,
  vent,
  heater,
  casing,
  sill,
  pipe,
  thermostat,
  alarm,
  other
};
/// Whether it sits in a box in the wall that cables run to.
constexpr bool is_box(ObstacleKind kind) {
  return kind == ObstacleKind::outlet || kind == ObstacleKind::switch_box ||
         kind == ObstacleKind::thermostat || kind == ObstacleKind::alarm;
}
struct Obstacle {
  ObstacleKind kind = ObstacleKind::other;
  std::string name;  // as printed: its kind unless the file names it
  Length along[2];
  bool from_right = false;
  Height height[2];
  Length out[2];  // from, to; negative = inside the wall
  Place place;
};

struct Wall {
  std::string name;
  bool from_corner_right = false;  // the default of the entries below; each carries its own
                                   // from_right, true only on a wall with two corners
  Readings length;
  std::optional<Height> length_height;  // left out = 1 m
  std::string ends_at;
  Length wallboard = inches(0.5);
  std::optional<Baseboard> baseboard;
  std::vector<LevelReading> levels;
  std::vector<StraightedgeReading> straightedges;
  std::vector<PlumbReading> plumbs;
  std::vector<StringReading> strings;
  std::optional<Studs> studs;
  std::vector<Obstacle> obstacles;
  Place place;

  /// Its greatest length that is not struck; nothing where nobody measured it.
  std::optional<Length> longest() const {
    std::optional<Length> found;
    for (const Reading& reading : length)
      if (!reading.struck) found = std::max(reading.value, found.value_or(reading.value));
    return found;
  }
};

}  // namespace nook
