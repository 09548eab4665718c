// What `fit` found, as plain values that text, JSON and the later steps are made from.
#pragma once

#include <string>
#include <vector>

#include "base/vector.h"
#include "base/verdict.h"
#include "design/piece.h"
#include "survey/report.h"
#include "survey/undecided.h"

// Room and piece frames: see room/survey.h and design/piece.h. Millimeters and degrees.
// Signs: a gap is positive where there is air, negative where the piece would be inside.

namespace nook {

/// How a group went in from where it is drawn: turned about the room's origin, then moved.
struct GroupFit {
  std::string name;
  std::vector<int> pieces;  // indices into FitAnswer::pieces
  Vec3 move;
  double turn_deg = 0;
  std::vector<std::string> touches;  // "left wall", "left wall outlet", "floor", pieces; sorted
  double still_moves_mm = 0;         // each time it is pushed home again; 0: it has come to rest
};

/// Overlap that is left after pushing home and notching.
struct ClashFit {
  int piece = 0;
  std::string part, with;
  double depth_mm = 0, sd_mm = 0;
  double most_mm = 0;  // the depth that a share `sure` of the draws does not exceed
  Vec3 at;             // room frame, the deepest spot
  double chance = 1;   // that there is none deeper than 0.1 mm
  Verdict verdict = Verdict::fits;
};

/// A gap at one spot of an edge. `at` is v on a left or right edge, u on a bottom or top edge, else
/// the length from the first point of the edge.
struct GapPoint {
  double at = 0, gap = 0, sd = 0;
};
struct FieldPoint {
  double u = 0, v = 0, gap = 0, sd = 0;
};
struct GapRange {
  double least = 0, most = 0;
};

/// One contact of one piece, pushed home, notches cut.
struct ContactFit {
  int contact = 0;               // index into Design::contacts
  const Contact* how = nullptr;  // that contact; lives in the Design
  int piece = 0;                 // index into FitAnswer::pieces
  std::string part, edge, meets;
  bool meets_anything = true;  // false: the edge cannot meet it; no figure below stands
  bool faces_away = false;     // it cannot, as it looks away from it
  GapRange gap;
  double gap_sd = 0;     // of gap.most (by clear: of the least over both faces)
  std::string eased_by;  // the scribed edge that lets it come off what it overlaps; empty: none
  double allow = 0;      // the widest gap accepted (by clear: the least distance)
  double chance = 1;
  double taper_deg = 0, taper_mm = 0;  // the straight cut that closes most, over the edge's length
  double scribe_mm = 0;                // how far the piece would move closer, scribed
  double wood_mm = 0;     // that may go: how far it stands off its drawn place and may come closer
  double touches_at = 0;  // where along the edge it touches (as GapPoint::at)
  double bevel_mm = 0;    // greatest difference between the two faces
  std::vector<GapPoint> line;         // the worse of the shown faces; empty for a face contact
  std::vector<GapPoint> front, back;  // both faces
  std::vector<FieldPoint> field;      // only of a face contact
  double square_mm = 0;               // the least distance to what it meets
  GapRange after;                     // what `by` leaves
  double past_mm = 0;                 // how far it reaches past the end of a wall as measured
  std::vector<std::string> spoils;    // what moving closer by scribe_mm would spoil
  std::vector<std::string> touches;   // as GroupFit has it, of this edge alone
  Verdict verdict = Verdict::fits;
};

/// What has to be cut out of a piece for an obstacle. A hole in it is not cut.
struct NotchFit {
  int piece = 0, contact = 0;
  std::string part, around;              // "left wall baseboard"
  Polygon polygon;                       // u, v; clipped to the outline
  double depth_mm = 0, depth_sd_mm = 0;  // from the edge, clearance included; sd of what it clears
  bool follows_profile = false;          // of the molding, not square
  // Of one that follows: from point to point along the edge (as GapPoint::at) how deep it goes at
  // least, straight between; few enough to lay out by hand.
  struct Step {
    double at = 0, deep = 0;
  };
  std::vector<Step> steps;
  std::vector<std::string> warnings;  // too little wood left, reaches a cutout, cuts a corner off
  std::string ruins;                  // the warning after which the piece is another one, or none
};

/// The least distance of a piece to something it must not, or does not, touch.
struct ClearanceFit {
  int piece = 0;
  std::string part, from;
  double least_mm = 0, sd_mm = 0, needed_mm = 0;
  double chance = 1;
  Verdict verdict = Verdict::fits;
};

/// An edge that must stay covered: the least width of the cover beside it, negative where it shows.
struct CoveredFit {
  int covered = 0;  // index into Design::covered
  int piece = 0;
  std::string part, behind;
  double margin_mm = 0, sd_mm = 0, needed_mm = 0;
  double chance = 1;
  Verdict verdict = Verdict::fits;
};

/// Something that shows without having been asked for.
struct ShowFit {
  std::string part, where;  // "deck", "porthole of front panel"
  std::string what;         // one line of words
  double by_mm = 0;
};

/// How a piece stands: the greatest shim under it, and how far the covering sinks under load.
struct FloorFit {
  int piece = 0;
  std::string part;
  double shim_mm = 0, shim_sd_mm = 0;
  double squash_mm = 0;  // likeliest; between the two below
  double squash_least_mm = 0, squash_most_mm = 0;
  // Where nothing says what stands on it: how far it may settle while a neighbor hangs on the
  // wall.
  double settles_mm = 0;
  bool on_tack_strip = false;
  std::string note;  // what that does to its neighbors; may be empty
  // The level cut of a foot that leans, off square: across its face and through its thickness, and
  // how much the foot differs over both.
  double foot_deg = 0, foot_bevel_deg = 0, foot_mm = 0;
};

/// A piece of solid wood held without a gap on both sides across its grain.
struct MovementFit {
  int piece = 0;
  std::string part;
  std::string edges[2], meets[2];
  double across_mm = 0;  // its width across the grain
  double moves_mm = 0;   // what that swells and shrinks by over a year
  double open_mm = 0;    // what both contacts leave open
};

/// A piece that would go in before the pieces it rests on.
struct EarlyFit {
  int piece = 0;
  std::string part;
  std::vector<std::string> on;  // in file order
};

/// A finding that the readings do not decide, and the surfaces that its quantity hangs on: by how
/// much it moves when each of them moves 1 mm.
struct OpenFinding {
  std::string what;  // "front panel, left edge at the left wall"
  double value_mm = 0, sd_mm = 0, limit_mm = 0;
  Undecided hangs_on;
};

/// The whole answer. Without `known` the room lacks readings: names only, every verdict cannot
/// tell.
struct FitAnswer {
  bool known = true;
  std::vector<GroupFit> groups;      // in the order they go in
  std::vector<ClashFit> clashes;     // worst first
  std::vector<ContactFit> contacts;  // in the order of the file, copies in order
  std::vector<NotchFit> notches;
  std::vector<ClearanceFit> clearances;
  std::vector<CoveredFit> covered;
  std::vector<ShowFit> shows;
  std::vector<FloorFit> floor;
  std::vector<MovementFit> movement;
  std::vector<EarlyFit> early;
  std::vector<OpenFinding> undecided;
  std::vector<NextReading> measure_next;  // what would settle most of it, if it was asked for
  double chance = 1;                      // share of draws in which every finding holds
  Verdict verdict = Verdict::fits;
  std::vector<Piece> pieces;  // all of them, in file order; they point into the Design
  std::vector<Frame> frames;  // each as placed in the adjusted room
  std::vector<std::vector<Frame>> frames_in_draws;  // by draw: each piece as placed there
};

}  // namespace nook
