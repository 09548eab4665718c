// The survey as read: what tape, level and stud finder said, as plain values with their places.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "base/length.h"
#include "base/notation.h"

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

/// What a reading to a wall was really taken on.
enum class Face { wall, baseboard };

/// One thing measured once. `value` has strong, shy and burned worked in.
struct Reading {
  Length value;
  std::optional<Length> sd;  // stated by the person; replaces everything, tape scale too
  Length smallest_mark;      // the smallest mark read
  bool burned = false;       // taken from a burned mark of the tape
  Face on = Face::wall;
  bool on_said = false;  // the file says which face
  bool struck = false;   // left out by the person; stays in the file and keeps its id
  std::string given;     // as typed
  std::string note;
  std::string id;  // "corner[0].diagonals[2]", unique in the survey
  Place place;
};
/// The same thing measured once or more.
using Readings = std::vector<Reading>;

/// A height, or a distance above (+) or below (-) the level line.
struct Height {
  Length value;
  bool from_line = false;
  Place place;
};

enum class TapeClass { I, II, III };
enum class TapeEnd { bent, case_length, block, burned };
struct Tape {
  TapeClass accuracy = TapeClass::II;
  Length read_to = inches(1.0 / 16);
  TapeEnd corner = TapeEnd::bent;
};
struct SpiritLevel {
  Length length = inches(48);
  bool length_said = false;     // the file says how long it is
  double slope_error = 0.5e-3;  // mm per mm
};
enum class LevelLine { laser, level, water };
/// How far walls usually stray from flat; missing parts are chosen by the readings or documented.
struct Flatness {
  std::optional<Length> sd;
  std::optional<Length> reach;
};

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

enum class StudKind { wood, steel, masonry, furring, unknown };
enum class FoundBy { nail, magnet, finder };
/// One stud as found, by its two edges or by its centre (the other list is empty).
struct StudFound {
  Readings left_edge, right_edge;  // nearer to and further from where `along` starts
  Readings centre;
  std::optional<Height> height;  // left out = 1 m
  FoundBy by = FoundBy::finder;
  bool from_right = false;
  std::string id;  // "wall[0].studs.found[2]"
  Place place;
};
struct Blocking {
  Length along[2];
  bool from_right = false;
  Height height[2];
  Place place;
};
struct Studs {
  StudKind kind = StudKind::unknown;
  std::optional<Length> spacing;  // nominal, on center
  Length width = inches(1.5), depth = inches(3.5);
  std::optional<double> gravity;  // specific gravity; left out = 0.42, and said so
  std::vector<StudFound> found;
  std::vector<Blocking> blocking;
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
};

/// A straight tape between a mark on the corner's first wall and one on its second.
/// Marks that stand at the same spot share one id (that of the first use).
struct Diagonal {
  Reading first, second;
  Readings straight;
  Height height;
  Place place;
};
struct SquareReading {
  Length blade;
  Readings gap;
  bool gap_at_tip = true;  // tip: the corner is open; heel: closed
  Height height;
  Place place;
};
struct AngleReading {
  Angle value;
  std::optional<Angle> sd;
  Length blade;
  Height height;
  bool struck = false;
  std::string given, note, id;
  Place place;
};
/// Mud built up in a corner, fading out over `reach` (linear from `proud` at the corner to 0).
struct Buildup {
  Length proud, reach;
};
struct Corner {
  int walls[2] = {0, 1};            // indices into Survey::walls, left one first
  Height height;                    // of its first entry in the file; left out = 1 m
  std::vector<Diagonal> diagonals;  // several entries, several heights: each carries its own
  std::vector<SquareReading> squares;
  std::vector<AngleReading> angles;
  std::optional<Buildup> buildup;
  Place place;
};
/// Wall to wall in an alcove, `out` from the wall between the two, at one height.
struct Across {
  int walls[2] = {0, 2};
  Length out;
  Height height;
  Readings is;
  Place place;
};

/// One end of a span: a mark by its name (corners are "left/right"), or a spot on a wall's base.
struct SpanEnd {
  std::string mark;  // empty = a spot on a wall
  int wall = -1;
  Reading along;  // only on a wall
  bool from_right = false;
  std::optional<Height> height;
  Place place;
};
struct Span {
  SpanEnd between[2];
  Readings is;
  Place place;
};

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
  Unit units = Unit::inch;
  Tape tape;
  SpiritLevel level;
  LevelLine level_line = LevelLine::laser;
  Flatness flatness;
  std::vector<Wall> walls;      // from left to right as one faces them
  std::vector<Corner> corners;  // one for each two neighbouring walls, left to right
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
};

}  // namespace nook
