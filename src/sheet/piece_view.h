// One piece as it is to be cut, before it is drawn.
#pragma once

#include <string>
#include <vector>

#include "design/design.h"
#include "sheet/scene.h"
#include "shop/cut.h"

// Piece frame: u to the right, v up, as seen from the front (design/piece.h).

namespace nook {

/// A hole to be bored in the piece.
struct PieceHole {
  Vec2 at;
  std::string number;
  bool probe_first = false;
};
/// The gap along one edge: how wide at each of its points.
struct PieceGap {
  struct Spot {
    Vec2 at;         // on the edge
    double gap = 0;  // positive where there is air
  };
  std::vector<Spot> spots;
  Vec2 out;           // unit, away from the piece
  std::string words;  // `left wall: gap 0 to 3/8"`
};

/// What is cut out of a corner or an edge, and for what.
struct PieceNotch {
  Polygon polygon;
  std::string around;  // "left wall baseboard"
};
/// An edge that is cut to a line that is not straight.
struct PieceScribe {
  std::vector<Vec2> line;
  std::string words;  // "left edge at the left wall"
};

struct PieceView {
  std::string name;
  std::string note;  // "cut 3 alike", ...; may be empty
  Polygon outline;   // finished, notches taken out
  Polygon blank;     // as it leaves the shop, wild edges on; empty = as finished
  std::vector<Cutout> cutouts;
  std::vector<PieceNotch> notches;
  std::vector<PieceScribe> scribes;
  std::vector<PieceHole> holes;
  std::vector<PieceHole> crosses;  // screws into other pieces, lettered as in their table
  std::vector<PieceGap> gaps;
  // Sides from which nothing is measured: left wild, or not square.
  bool shy_of_left = false, shy_of_bottom = false;
  ShowFace show = ShowFace::front;
  std::optional<EdgeSide> up;  // the side that stands up in the room, where that is not the top
};

/// A piece of the cutting list: finished, its blank round it where edges are left wild, its
/// notches, holes, scribe lines cut beforehand, and the gaps along its edges as it is drawn.
PieceView cut_view(const JobScene& scene, const CutPiece& piece);

/// a, b, ..., z, aa, ab, ...: what the n-th screw into another piece is called, from 0.
std::string letter_of(std::size_t n);

/// The piece as drawn with the holes to bore in it on the bench, counted from the edges they hook
/// on.
PieceView bench_view(const JobScene& scene, int piece);

/// Sides of an outline with dimensions worth a tape: points where it bends by more than 15 degrees
/// and that are not nearer than 10 mm to the one before. Chosen.
std::vector<Vec2> corners_of(const Polygon& outline);

/// The point `at` along an edge or a run of them (as GapPoint::at has it; not a face), and the
/// direction out of the piece there.
struct EdgeSpot {
  Vec2 at, out;
};
EdgeSpot spot_of(const Polygon& outline, const EdgeChoice& edge, double at);

}  // namespace nook
