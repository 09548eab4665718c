// A plane looked at square on, and what stands before it: the pieces and the room as flat shadows.
#pragma once

#include <compare>
#include <optional>
#include <vector>

#include "base/vector.h"
#include "design/piece.h"
#include "room/shape.h"

//        t
//        |   shadow        n = s x t comes out of the page, towards the viewer;
//        o-------- s       depth counts along n from the plane

namespace nook::safe {

/// A piece where it stands, cut into convex cells once.
struct Body {
  const Piece* piece = nullptr;
  Frame frame;
  Region region;               // outline less cutouts, u, v
  std::vector<Polygon> cells;  // the same, convex
};
/// Outline less cutouts, and its cells.
Body body_of(const Piece& piece, const Frame& frame);

struct Sight {
  Vec3 at, s, t, n;

  Vec2 seen(Vec3 p) const { return {dot(p - at, s), dot(p - at, t)}; }
  double depth(Vec3 p) const { return dot(p - at, n); }
  Vec3 room(Vec2 q) const { return at + q.x * s + q.y * t; }
};

/// The plane through `at`, square to `normal`: t as nearly up as it lies in the plane; in a level
/// plane s = x and t = y.
Sight sight_across(Vec3 at, Vec3 normal);

/// What a shadow belongs to.
struct Owner {
  enum class Kind { piece, wall, floor, ceiling, fill };
  Kind kind = Kind::piece;
  int index = 0;  // of the piece or the wall

  friend auto operator<=>(const Owner&, const Owner&) = default;
};

struct Shadow {
  Owner owner;
  Region region;  // s, t
};

/// How much of the depth before and behind the plane counts.
struct Slab {
  double near = 0, far = 0;  // depths; near < far
};

/// The shadow of that part of a piece which lies in the slab: one region where the piece lies flat
/// in the plane, else convex regions that may overlap. Empty where nothing of it does.
std::vector<Region> shadows_of(const Body& body, const Sight& sight, Slab slab);

struct Window {
  Vec2 low, high;  // s, t
};

/// The walls that cross the plane, the floor and the ceiling, as far as the window shows them.
/// A wall within 30 degrees of the plane (chosen) crosses nothing.
std::vector<Shadow> shadows_of(const RoomShape& room, const Sight& sight, Window window);

/// How far a point stands before a wall's face, mm; negative inside the wall.
double before(const WallShape& wall, Vec3 p);

}  // namespace nook::safe
