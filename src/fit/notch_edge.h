// The edge that a notch is cut from, and how far an obstacle reaches over it.
#pragma once

#include <limits>

#include "fit/surface_ahead.h"
#include "fit/trials.h"

namespace nook {

inline constexpr double kNoReach = -std::numeric_limits<double>::infinity();

/// What the blocks of a wall take of an edge in one room.
class Overhang {
 public:
  Overhang(const Trials& trials, const Joint& joint, int room);
  /// How far a block reaches over the edge at one feeler, mm inwards; kNoReach where none is met.
  double reach(int feeler);

 private:
  const Joint& joint_;
  SurfaceAhead wall_;
};

/// Whether the zone takes the spot.
bool in_zone(const JointSpot& spot, const NotchZone& zone);

/// The edge at a zone: a point of it, its direction, and t there.
struct EdgeLine {
  Vec2 at, way;
  double t = 0;
  Vec2 point(double at_t) const { return at + (at_t - t) * way; }
  Vec2 inwards() const { return left_of(way); }  // the outline runs anticlockwise
};
EdgeLine edge_line(const Joint& joint, const NotchZone& zone);

}  // namespace nook
