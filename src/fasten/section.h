// What a plane cuts out of a placed piece, and where a piece's face is free to take a screw.
#pragma once

#include <vector>

#include "design/piece.h"
#include "solid/polygon.h"

namespace nook {

/// A plane with its own two directions; all unit, square to each other.
struct CutPlane {
  Vec3 at, e1, e2, normal;

  Vec2 plane_from_room(Vec3 p) const { return {dot(p - at, e1), dot(p - at, e2)}; }
};

/// Outline less cutouts, piece frame u, v.
Regions wood_of(const Piece& piece);

/// The cut of `plane` through the piece, in the plane's coordinates. Empty where it passes beside
/// the piece, or where the piece stands at a skew to it (by more than half a degree).
Regions section_of(const Piece& piece, const Frame& frame, const CutPlane& plane);

/// How far along unit `d` from `p` the piece's wood reaches, mm; 0 outside it.
double wood_ahead(const Piece& piece, const Frame& frame, Vec3 p, Vec3 d);

/// The range of the piece along `normal` from `at`, mm.
Stretch reach_along(const Piece& piece, const Frame& frame, Vec3 at, Vec3 normal);

}  // namespace nook
