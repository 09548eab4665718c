// Separating axes of convex prisms (Gottschalk, Lin and Manocha 1996, section 4).
#include "fit/separation.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "solid/cells.h"

namespace nook {
namespace {

constexpr double kDrawnOverlap = 1;  // mm; drawn deeper than this is meant to overlap. Chosen
constexpr double kAlong =
    0.02;  // cosine; an axis more along a length that goes on would end with it
constexpr double kSameAxis = 1e-6;

Vec3 in_room(const Frame& f, Vec3 d) {
  return d.x * f.u + d.y * f.v + d.z * f.w;
}

Vec3 in_frame(const Frame& f, Vec3 d) {
  return {dot(d, f.u), dot(d, f.v), dot(d, f.w)};
}

struct Reach {
  double low = std::numeric_limits<double>::infinity();
  double high = -std::numeric_limits<double>::infinity();
};
// The upper ring reaches as far as the lower one, and a thickness on or back.
Reach reach_of(std::span<const Vec3> corners, const Frame& frame, Vec3 axis) {
  const Vec3 local = in_frame(frame, axis);
  const double shift = dot(axis, frame.at);
  Reach ring;
  for (Vec3 p : corners.first(corners.size() / 2)) {
    const double x = local.x * p.x + local.y * p.y;
    ring.low = std::min(ring.low, x);
    ring.high = std::max(ring.high, x);
  }
  const double through = local.z * corners.back().z;
  return {ring.low + std::min(through, 0.0) + shift, ring.high + std::max(through, 0.0) + shift};
}

struct Axes {
  const CellSolid& a;
  const Frame& frame_a;
  const CellSolid& b;
  const Frame& frame_b;
};

// Both ways along every axis that may part two prisms, until one ends it: `look(distance, axis,
// owner)` says whether to look further; the owner 0 or 1 where the axis is square to a face of a
// or b, else 2.
template <class Look>
void each_axis(const Axes& x, Look look) {
  const auto along = [&](Vec3 axis, int owner) {
    const Reach ra = reach_of(x.a.corners, x.frame_a, axis),
                rb = reach_of(x.b.corners, x.frame_b, axis);
    return look(rb.low - ra.high, axis, owner) && look(ra.low - rb.high, -axis, owner);
  };
  for (Vec3 n : x.a.normals)
    if (!along(in_room(x.frame_a, n), 0)) return;
  for (Vec3 n : x.b.normals)
    if (!along(in_room(x.frame_b, n), 1)) return;
  for (Vec3 ea : x.a.edges)
    for (Vec3 eb : x.b.edges) {
      const Vec3 axis = cross(in_room(x.frame_a, ea), in_room(x.frame_b, eb));
      const double length = norm(axis);
      if (length > 1e-6 && !along((1 / length) * axis, 2)) return;
    }
}

void add_direction(std::vector<Vec3>& list, Vec3 d) {
  const auto same = [&](Vec3 e) { return std::abs(dot(d, e)) > 1 - 1e-12; };
  if (std::none_of(list.begin(), list.end(), same)) list.push_back(d);
}

PartingPlane plane_along(const CellSolid& holder, const Frame& fh, const CellSolid& other,
                         Vec3 axis) {
  PartingPlane plane{
      holder.piece, other.piece, {}, reach_of(holder.corners, fh, axis).high, other.corners};
  plane.normal = in_frame(fh, axis);
  plane.offset -= dot(axis, fh.at);
  return plane;
}

// Adds what parts two convex solids, if they are near; how far they are apart.
double add_parting(const Axes& x, std::vector<Parting>& partings) {
  Parting parting{x.a.piece, x.b.piece, {}};
  double most = -std::numeric_limits<double>::infinity();
  each_axis(x, [&](double distance, Vec3 axis, int owner) {
    most = std::max(most, distance);
    if (distance < -kDrawnOverlap || owner == 2) return true;
    parting.planes.push_back(owner == 0 ? plane_along(x.a, x.frame_a, x.b, axis)
                                        : plane_along(x.b, x.frame_b, x.a, -axis));
    return true;
  });
  if (most <= kPartingNear && !parting.planes.empty()) partings.push_back(std::move(parting));
  return most;
}

}  // namespace

CellSolid solid_of(const Polygon& convex, double thickness, int piece) {
  CellSolid solid{piece, {}, {{0, 0, 1}}, {{0, 0, 1}}};
  for (double w : {0.0, thickness})
    for (Vec2 p : convex) solid.corners.push_back({p.x, p.y, w});
  for (std::size_t i = 0; i < convex.size(); ++i) {
    const Vec2 d = convex[(i + 1) % convex.size()] - convex[i];
    const double length = norm(d);
    if (length < 1e-9) continue;
    add_direction(solid.edges, {d.x / length, d.y / length, 0});
    add_direction(solid.normals, {-d.y / length, d.x / length, 0});
  }
  return solid;
}

PieceSolid solid_of(const Body& body, int piece) {
  PieceSolid solid;
  Polygon all;
  for (const Polygon& cell : body.cells) {
    solid.cells.push_back(solid_of(cell, body.thickness, piece));
    all.insert(all.end(), cell.begin(), cell.end());
  }
  solid.hull = solid_of(hull_of(std::move(all)), body.thickness, piece);
  return solid;
}

Apart apart(const CellSolid& a, const Frame& frame_a, const CellSolid& b, const Frame& frame_b,
            double enough) {
  Apart best{-std::numeric_limits<double>::infinity(), {}, false};
  each_axis({a, frame_a, b, frame_b}, [&](double distance, Vec3 axis, int owner) {
    const bool along = distance < 0 && ((a.goes_on && std::abs(dot(axis, frame_a.w)) > kAlong) ||
                                        (b.goes_on && std::abs(dot(axis, frame_b.w)) > kAlong));
    if (!along && distance > best.distance + kSameAxis) best = {distance, axis, owner == 1};
    return best.distance < enough;
  });
  best.axis = in_frame(best.of_b ? frame_b : frame_a, best.axis);
  return best;
}

double apart_along(const Apart& before, std::span<const Vec3> a, const Frame& frame_a,
                   std::span<const Vec3> b, const Frame& frame_b) {
  const Vec3 axis = in_room(before.of_b ? frame_b : frame_a, before.axis);
  return reach_of(b, frame_b, axis).low - reach_of(a, frame_a, axis).high;
}

RoomBox box_of(std::span<const Vec3> corners, const Frame& frame) {
  constexpr double kFar = std::numeric_limits<double>::infinity();
  RoomBox box{{kFar, kFar, kFar}, {-kFar, -kFar, -kFar}};
  for (Vec3 corner : corners) {
    const Vec3 p = frame.room_from_piece(corner);
    box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y), std::min(box.low.z, p.z)};
    box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y), std::max(box.high.z, p.z)};
  }
  return box;
}

double apart(const RoomBox& a, const RoomBox& b) {
  const auto gap = [](double low_a, double high_a, double low_b, double high_b) {
    return std::max({0.0, low_b - high_a, low_a - high_b});
  };
  return norm(Vec3{gap(a.low.x, a.high.x, b.low.x, b.high.x),
                   gap(a.low.y, a.high.y, b.low.y, b.high.y),
                   gap(a.low.z, a.high.z, b.low.z, b.high.z)});
}

std::vector<Parting> partings_of(const PieceSolid& a, const Frame& frame_a, const PieceSolid& b,
                                 const Frame& frame_b) {
  std::vector<Parting> partings;
  // Pieces that stand apart as wholes need one parting; only interlocking ones go cell by cell.
  const double whole = add_parting({a.hull, frame_a, b.hull, frame_b}, partings);
  if (whole >= -kDrawnOverlap) return partings;
  partings.clear();
  for (const CellSolid& ca : a.cells)
    for (const CellSolid& cb : b.cells) add_parting({ca, frame_a, cb, frame_b}, partings);
  return partings;
}

PlaneInRoom::PlaneInRoom(const PartingPlane& plane, const Frame& holder)
    : normal(in_room(holder, plane.normal)), offset(plane.offset + dot(normal, holder.at)) {}

}  // namespace nook
