// Pieces kept apart: for each pair of convex cells the plane that parts them as drawn.
#pragma once

#include <limits>
#include <optional>
#include <span>
#include <vector>

#include "fit/body.h"
#include "fit/motion.h"

namespace nook {

/// A convex cell of a piece as its corners in the piece's frame, lower ring (w = 0) then upper.
struct CellSolid {
  int piece = 0;
  std::vector<Vec3> corners;
  std::vector<Vec3> normals;  // of its faces, unit, one of each opposite pair
  std::vector<Vec3> edges;    // their directions, unit
  bool goes_on = false;       // one length of something longer: overlap is not left along its w
};
/// A piece as one convex solid round it and as its own convex cells.
struct PieceSolid {
  CellSolid hull;
  std::vector<CellSolid> cells;
};
CellSolid solid_of(const Polygon& convex, double thickness, int piece);
PieceSolid solid_of(const Body& body, int piece);

/// How far two solids are apart along the best axis (negative: how deep they overlap along the
/// shallowest), and that axis, a unit from `a` towards `b`: in the frame of `a`, or of `b` where it
/// is square to one of its faces.
struct Apart {
  double distance = 0;
  Vec3 axis;
  bool of_b = false;
};
/// Looks no further once they are `enough` apart.
Apart apart(const CellSolid& a, const Frame& frame_a, const CellSolid& b, const Frame& frame_b,
            double enough = std::numeric_limits<double>::infinity());
/// How far apart they are along an axis found before; never more than `apart` finds.
/// Corners as those of a CellSolid.
double apart_along(const Apart& before, std::span<const Vec3> a, const Frame& frame_a,
                   std::span<const Vec3> b, const Frame& frame_b);

/// The upright box round a solid where it stands, and how far two such boxes are apart (0 where
/// they touch or cross): never more than the solids are.
struct RoomBox {
  Vec3 low, high;
};
RoomBox box_of(std::span<const Vec3> corners, const Frame& frame);
double apart(const RoomBox& a, const RoomBox& b);

/// Pieces further apart as drawn will not meet, mm. Chosen.
inline constexpr double kPartingNear = 60;

/// A plane of one piece that a cell of another has to stay in front of.
struct PartingPlane {
  int holder = 0, other = 0;  // pieces: the plane moves with `holder`
  Vec3 normal;                // in the holder's frame, towards the other
  double offset = 0;          // the plane: normal . p = offset, p in the holder's frame
  std::vector<Vec3> corners;  // of the other's cell, in its frame
};
/// Two cells kept apart by one of several planes, whichever they are furthest behind.
struct Parting {
  int a = 0, b = 0;  // pieces
  std::vector<PartingPlane> planes;
};

/// The planes that part two pieces as drawn, for cells that are near each other. Pairs that overlap
/// as drawn have none: nothing says which way they should part.
std::vector<Parting> partings_of(const PieceSolid& a, const Frame& frame_a, const PieceSolid& b,
                                 const Frame& frame_b);

/// A plane where its holder stands.
struct PlaneInRoom {
  Vec3 normal;
  double offset;

  PlaneInRoom(const PartingPlane& plane, const Frame& holder);
  /// How far in front of it a point is.
  double gap(Vec3 p) const { return dot(normal, p) - offset; }
};

}  // namespace nook
