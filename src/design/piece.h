// The single pieces of a design: repeats written out, each with its frame in the nominal room.
#pragma once

#include <string>
#include <vector>

#include "design/design.h"

// Piece frame: u to the right and v up as seen from the front; w = u x v towards the viewer.
// The back is w = 0, the front w = thickness.
//
//        v
//        |  outline           w comes out of the page
//        o-------- u

namespace nook {

/// An orthonormal frame: origin and the directions of u, v and w.
struct Frame {
  Vec3 at, u, v, w;

  Vec3 room_from_piece(Vec3 p) const { return at + p.x * u + p.y * v + p.z * w; }
  Vec3 piece_from_room(Vec3 p) const { return {dot(p - at, u), dot(p - at, v), dot(p - at, w)}; }
};

struct Piece {
  std::string name;             // "rung 2" for the second copy of a repeated part
  int part = 0;                 // index into Design::parts
  int copy = 0;                 // 1, 2, ... for copies; 0 for a part without repeat
  Frame frame;                  // nominal
  double thickness = 0;         // mm
  bool stick = false;           // lumber: its left and right are its ends
  const Part* drawn = nullptr;  // outline, cutouts, group, show; lives in the Design
};

/// Every piece, in file order. The pieces point into `design`, which must outlive them.
std::vector<Piece> pieces_of(const Design& design);

/// Whether a name means the piece: its own name, or its part's.
bool is_named(const Piece& piece, const std::string& name);

/// Indices into `pieces` that a name means: one piece, or every copy of a repeated part.
std::vector<int> pieces_named(const std::vector<Piece>& pieces, const Design& design,
                              const std::string& name);

/// The group that a piece goes in with: each copy of a repeated part without one by itself.
std::string group_of(const Piece& piece);

/// The lowest point of a piece at a frame, room z.
double lowest(const Piece& piece, const Frame& frame);

/// The edges of an outline that an EdgeSide means: the outermost stretch that faces that side;
/// where none does, the edge that faces it most.
EdgeRun side_of(const Polygon& outline, EdgeSide side);

/// The frame of a placement, turn and lean applied.
Frame frame_of(const Placement& placement);

}  // namespace nook
