// The drilling map: where each screw goes, how surely it holds, what each piece carries.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/verdict.h"
#include "design/piece.h"
#include "room/shape.h"
#include "room/survey.h"
#include "survey/report.h"

// Everything in millimeters, newtons and chances from 0 to 1. `along` and `height` as in
// room/survey.h: along from the real corner at the hole's own height, height above the floor there.

namespace nook {

/// A plumb line struck off a stud whose two edges were found: the start of every measure on a wall.
struct PlumbDatum {
  int stud = 0;         // index into WallDrill::studs
  double along_mm = 0;  // of its centre, from the corner, at height_mm
  double height_mm = 0;
};

/// One screw hole. `u_mm`, `v_mm` lie in the piece frame.
struct Hole {
  std::string id;           // "left 3": the third on the left wall
  std::string part;         // piece name
  std::string into;         // the piece it goes into; empty on a wall
  int fastening = 0;        // index into Design::fastenings
  std::optional<int> stud;  // index into WallDrill::studs; none in blocking or in a piece
  double along_mm = 0, height_mm = 0;   // on a wall; 0 in a piece
  std::optional<double> from_line_mm;   // up (+) from the level line
  std::optional<double> from_datum_mm;  // away from the corner (+) from the plumb line
  double u_mm = 0, v_mm = 0;
  std::string end;         // the square end it counts from, in the piece frame: "left", ...
  double from_end_mm = 0;  // from that end
  std::string edge;        // the edge it counts from, usually "top"
  double from_edge_mm = 0;
  double edge_distance_mm = 0;  // from the axis to the nearest edge of the stud, as estimated
  double embedment_mm = 0;
  double hit_chance = 0;  // the axis lies in the stud less its edge distance
  double pilot_mm = 0;    // for the thread
  double shank_pilot_mm = 0;
  double clearance_mm = 0;            // hole in the piece
  double depth_mm = 0;                // to flag on the bit, from the face the screw enters
  double shim_mm = 0;                 // between piece and wall
  bool sure = true;                   // hit_chance is as high as is asked for, .999 at the least
  bool proved = false;                // both edges of its stud were found by nail at its height
  bool probe_first = false;           // on a wall, neither sure nor proved
  int drive = 0;                      // 1, 2, ... within its piece
  double load_n = 0;                  // what this screw carries of the load, down positive
  std::vector<std::string> warnings;  // in the words of the trade, lengths as the file's units
};

/// The hole as a stick has it: its ends are left and right, its edges bottom and top, however the
/// row runs that the hole is of.
Hole in_a_stick(Hole hole);

/// A piece as it hangs on a wall.
struct HungPiece {
  std::string part;
  double near_mm = 0, far_mm = 0;          // along, of its two ends, the nearer to the corner first
  double bottom_mm = 0, top_mm = 0;        // height, at its middle
  std::optional<double> top_from_line_mm;  // up (+) from the level line
  std::string screw;                       // "#10 x 3" wood screw"
  std::vector<std::string> notes;          // studs behind it that get no screw, and why
};
struct WallDrill {
  std::string name;
  bool runs_left = false;  // facing the wall, along runs to the left: its corner is on the right
  std::vector<StudReport> studs;        // found and inferred, from the corner on
  std::vector<std::string> stud_notes;  // doubled, leaning, off the pattern
  std::optional<PlumbDatum> datum;
  std::vector<HungPiece> pieces;
  std::vector<Hole> holes;  // by piece, then along, then from the top
};
/// Screws from one piece into another.
struct JointDrill {
  std::string part, to;
  std::vector<Hole> holes;
};

/// What nothing says yet, and what to do about it.
struct Untold {
  std::string what, advice;
  bool operator==(const Untold&) const = default;
};

/// What one fastening carries. A figure that cannot be had is missing and `mode` says why.
struct Strength {
  std::string part, to;
  std::optional<double> load_n;      // as stated, pull included (resultant)
  std::optional<double> capacity_n;  // that load at which its worst screw is at its limit
  std::optional<double> ratio;       // of the worst screw
  std::string mode;                  // "IV", "withdrawal", ... or why there is no figure
  std::string source;
  std::string worst_hole;           // id
  double worst_load_n = 0;          // on that screw
  double screw_n = 0;               // its capacity
  double lift_n = 0;                // largest upward load on one stud
  std::vector<std::string> notes;   // what is taken for granted
  std::vector<std::string> advice;  // what to do
};

/// A piece that a fastening of it cannot hold.
struct Unreachable {
  std::string part, reason;
  std::string advice{};  // what the trade does instead
};

/// Marks to copy onto a stick, all from one start.
struct StoryPole {
  struct Mark {
    double at_mm = 0;  // from the start
    std::string what;
  };
  std::string of;           // "left wall" or a piece
  std::string start;        // where the stick starts and which way it runs
  std::vector<Mark> marks;  // in running order
};

struct DrillAnswer {
  Verdict verdict = Verdict::fits;
  std::vector<WallDrill> walls;  // every wall of the survey
  std::vector<JointDrill> parts;
  std::vector<Strength> strength;
  std::vector<Unreachable> unreachable;
  std::vector<StoryPole> poles;
  std::vector<NextReading> probes;  // which probe would settle most, best first
  std::vector<Untold> missing;
};

struct DrillInput {
  const Survey& survey;
  const Design& design;
  const RoomShape& room;
  const std::vector<RoomShape>& draws;  // from what the readings leave open
  const std::vector<Piece>& pieces;
  const std::vector<Frame>& frames;  // of each piece as placed; piece.frame where drawn
  double sure = 0.95;
  bool complete = true;  // false: the room is not determined, no holes
};

/// Holes, strength and story poles of every fastening; without a complete room only what is
/// missing.
DrillAnswer drill(const DrillInput& input);

/// The studs of each wall from its corner on, found and inferred, each at its own height.
std::vector<std::vector<StudReport>> studs_of(const Survey& survey, const RoomShape& room);

/// Stud edges that do not agree with the stud's width, for the room's report.
std::vector<Suspect> stud_suspects(const Survey& survey);

}  // namespace nook
