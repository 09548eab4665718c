// Outlines with an edge moved: wild wood left on, a taper taken off, a side trimmed.
#pragma once

#include "base/vector.h"
#include "design/piece.h"
#include "solid/polygon.h"

namespace nook {

/// How far an edge moves outward (+) or inward (-), square to itself: at its first point and at its
/// last one, in the order of the outline, mm.
struct EdgeMove {
  double first = 0, last = 0;
};

/// The outline with a run of edges moved. The neighbors keep their lines and the run's ends slide
/// along them; where a neighbor is within 12 degrees of the run, its end moves square to the run.
/// Requires: an anticlockwise outline.
Polygon moved(const Polygon& outline, EdgeRun run, EdgeMove by);

/// The run of edges that a choice means on an outline; nothing for a face.
std::optional<EdgeRun> run_of(const Polygon& outline, const EdgeChoice& edge);

/// The side of the piece that a choice lies on: within 25 degrees of square to it; else nothing.
std::optional<EdgeSide> side_meant(const Polygon& outline, const EdgeChoice& edge);

/// The outline with u and v changed, so that what is measured across it is measured up it. It then
/// runs the other way round.
Polygon on_its_side(Polygon outline);

/// Of the bounds of an outline, anticlockwise.
enum PieceCorner { lower_left, lower_right, upper_right, upper_left };
inline constexpr PieceCorner kAround[] = {lower_left, lower_right, upper_right, upper_left};
Vec2 corner_of(const Box2& box, PieceCorner corner);

/// The index of the vertex nearest to a corner of the outline's bounds.
size_t vertex_at(const Polygon& outline, PieceCorner corner);

/// Where the outline begins and ends along a level line at v, or along an upright one at u: its
/// outermost crossings. A line outside it is taken to its nearest edge.
struct Chord {
  double from = 0, to = 0;
  double length() const { return to - from; }
};
Chord chord_level(const Polygon& outline, double v);
Chord chord_upright(const Polygon& outline, double u);

}  // namespace nook
