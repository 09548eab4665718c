// One reading as typed and where it stands, and the tools it was taken with.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "base/length.h"

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

}  // namespace nook
