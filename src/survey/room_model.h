// The room as unknown numbers and fields, and each reading as a function of them.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "room/shape.h"
#include "room/survey.h"
#include "survey/span_spot.h"
#include "survey/varied.h"
#include "survey/worth.h"

namespace nook {

/// What an unknown stands for; `of` in Unknown is the wall, corner or axis it belongs to.
enum class UnknownKind {
  angle,           // of a corner, between base lines, rad
  length,          // of the base line between two corners
  lean,            // mm out per mm up
  tape,            // the tape's scale, in units of its permitted error / sqrt 3
  extent,          // from the corner to a wall's free end
  mark,            // true place of a mark on a wall, from the real corner
  offset,          // of a plumb line, string or straightedge from the base line
  tilt,            // of a string or straightedge, mm per mm
  line_height,     // of the level line
  floor_slope,     // along the floor field's axes (of = 0, 1)
  ceiling_height,  // at the origin
  ceiling_slope,
  point  // a coordinate of a free mark in plan
};

struct Unknown {
  UnknownKind kind = UnknownKind::angle;
  int of = 0;
  std::string name;     // what it belongs to, in words
  double start = 0;     // first value
  double prior_sd = 0;  // of N(0, prior_sd^2); 0 = no prior
};

/// A wall, the floor or the ceiling as a field. `first` is its first weight among all weights,
/// which are scaled to N(0, 1).
struct FieldWeights {
  std::shared_ptr<const FieldBasis> basis;  // none = flat
  double sd = 0;
  int first = 0;
};

/// Values of all unknowns and all scaled weights.
struct State {
  std::vector<double> unknowns;
  std::vector<double> weights;
};

class View;

/// One reading as an equation: value = model(room) + its own error.
struct Observation {
  std::string id, given;
  Place place;
  bool struck = false;
  double value = 0;  // mm, or rad
  Worth worth;       // mm, or rad
  double blade = 0;  // of an angle reading, mm; its figures times this are mm
  std::function<Varied(View&)> model;
  std::string where;        // "left wall", "corner of left and right wall"
  int corner = -1;          // whose it is, if a corner's
  int wall = -1;            // whose it is, if a wall's
  double counted_from = 0;  // length of the wall that it might have been counted back on; 0 = none
  double board = 0;         // what boards may have taken off it, where no height tells; mm
  bool two_ended = false;   // says at which of two ends the gap is
};

/// The whole problem, without numbers for the unknowns.
struct RoomModel {
  std::shared_ptr<const Survey> survey;
  int origin = 0;  // corner of the room frame
  std::vector<Unknown> unknowns;
  std::vector<FieldWeights> surfaces;     // walls, then floor, then ceiling if there are readings
  int weights = 0;                        // in all surfaces
  std::vector<Observation> observations;  // in file order

  std::vector<int> angle;              // unknown of each corner
  std::vector<int> length;             // of each wall between two corners, else -1
  std::vector<double> assumed_length;  // of each wall, for its field and where nothing says
  std::vector<int> lean;
  int tape = -1, line = -1, ceiling = -1;
  int floor_slope = -1, ceiling_slope = -1;  // the first of two
  std::vector<SpanTie> ties;
  std::map<std::string, int> point;  // x of a free mark; y follows

  int walls() const { return static_cast<int>(lean.size()); }
  int corners() const { return static_cast<int>(angle.size()); }
  int floor_field() const { return walls(); }
  int ceiling_field() const { return floor_field() + 1; }
  int add(Unknown unknown);
  /// The first weight of each surface that is not flat.
  std::vector<int> blocks() const;
};

/// The reach of the walls' humps and hollows, as stated or 400 mm.
double wall_reach(const Survey& survey);

/// What is taken for granted of a room where its readings do not say.
struct Assumed {
  bool level_line = false;     // it is there even where nothing was read from it
  std::vector<double> length;  // of walls, mm; empty or 0 = a usual one
};
/// Unknowns, fields and readings of a survey. Fields have flatness sd `flatness_sd` (mm).
RoomModel room_model(std::shared_ptr<const Survey> survey, int origin, double flatness_sd,
                     const Assumed& assumed = {});
/// The same room with another flatness. Requires: neither is 0.
void set_flatness(RoomModel& model, double flatness_sd);
/// The model with its unknowns at their first values.
State first_state(const RoomModel& model);
/// The room that a state describes.
RoomShape room_shape(const RoomModel& model, const State& state);

}  // namespace nook
