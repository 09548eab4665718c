// A piece as a solid: its outline with cutouts, cut into convex cells, from w = 0 to its thickness.
#pragma once

#include <optional>
#include <vector>

#include "design/piece.h"
#include "solid/polygon.h"

namespace nook {

struct Body {
  Region region;               // u, v; cutouts are its holes
  std::vector<Polygon> cells;  // convex, anticlockwise
  double thickness = 0;
};

/// As drawn.
Body body_of(const Piece& piece);
/// With what is cut out of it.
Body body_less(const Body& body, const Regions& cut);

/// Where a ray first meets a body, in the body's frame: the distance (negative where the ray starts
/// inside: back to the way in) and the outward normal of the face there.
struct BodyHit {
  double distance = 0;
  Vec3 normal;
};
/// `from` and `way` (unit) in the body's frame. Nothing if the ray misses, or meets only what lies
/// more than `behind` behind its start.
std::optional<BodyHit> first_hit(const Body& body, Vec3 from, Vec3 way, double behind);

}  // namespace nook
