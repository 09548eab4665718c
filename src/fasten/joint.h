// Screws from one piece into another: where the two lie on each other, and what the screw meets.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "design/piece.h"
#include "fasten/drill.h"
#include "fasten/said.h"
#include "fasten/section.h"

namespace nook {

/// A piece where it stands.
struct Placed {
  const Piece& piece;
  const Frame& frame;
};

/// All pieces of a design where they stand.
struct PlacedPieces {
  const Design& design;
  const std::vector<Piece>& pieces;
  const std::vector<Frame>& frames;

  Placed at(int piece) const { return {pieces[piece], frames[piece]}; }
  std::vector<int> named(const std::string& name) const {
    return pieces_named(pieces, design, name);
  }
};

/// Where one piece lies on another.
struct Meeting {
  bool by_edge = false;  // an edge of the first piece, else a face
  CutPlane plane;        // normal into the other piece; face: e1, e2 = the piece's u, v
  Regions overlap;       // in the plane
  double gap = 0;        // between them, mm
  double inside = 0;     // how far the plane lies in the other piece, mm
  int edge = 0;          // by_edge: edge number of the outline
  bool back = true;      // by face: which one
};
/// The face (the one asked for, else the one with the greater overlap); none where none lies on it.
std::optional<Meeting> face_meeting(const Placed& part, const Placed& to,
                                    std::optional<PieceFace> asked);
/// How far the nearer face of a piece stands before another piece that it would lie on, up to 50 mm
/// (chosen); none where none does.
std::optional<double> air_between(const Placed& part, const Placed& to);
/// The edge with the greatest overlap.
std::optional<Meeting> edge_meeting(const Placed& part, const Placed& to);

struct JointScrews {
  JointDrill drill;
  std::vector<Unreachable> unreachable;
  std::vector<double> gaps;  // of each hole
  double wood_depth = 0;     // of the other piece ahead of the screws, the least, mm
  bool end_grain = false;    // the thread sits in the other piece's end grain
};
/// One piece to be screwed to another.
struct Joining {
  Placed part, to;
  Meeting meeting;
  const Fastening& fastening;
  const Design& design;
  Saying say;
  Box2 row;     // of all that the fastening joins to `part`, in the meeting's plane
  double sure;  // a hole less sure than this may break out
};
/// The screws where the two meet, from the end on; none and why where they do not hold.
JointScrews joint_screws(const Joining& joining);

/// What lies on the face that a screw enters through (the far one of `face`), and pockets drilled
/// for the piece's own pocket screws: no place for another screw. Piece frame u, v.
Regions taken_up(const PlacedPieces& pieces, int piece, PieceFace against);

}  // namespace nook
