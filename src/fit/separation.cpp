// Separating axes of convex prisms (Gottschalk, Lin and Manocha 1996, section 4).
#include "fit/separation.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "fit/body.h"

namespace nook {
namespace {

constexpr double kNear = 60;         // mm; pieces further apart as drawn will not meet. Chosen
constexpr double kDrawnOverlap = 1;  // mm; drawn deeper than this is meant to overlap. Chosen
constexpr double kSameAxis = 1e-6;

Vec3 in_room(const Frame& f, Vec3 d) {
  return d.x * f.u + d.y * f.v + d.z * f.w;
}

struct Reach {
  double low = std::numeric_limits<double>::infinity();
  double high = -std::numeric_limits<double>::infinity();
};
Reach reach_of(const CellSolid& solid, const Frame& frame, Vec3 axis) {
  const Vec3 local{dot(axis, frame.u), dot(axis, frame.v), dot(axis, frame.w)};
  const double shift = dot(axis, frame.at);
  Reach reach;
  for (Vec3 p : solid.corners) {
    const double x = dot(local, p) + shift;
    reach.low = std::min(reach.low, x);
    reach.high = std::max(reach.high, x);
  }
  return reach;
}

struct Axes {
  const CellSolid& a;
  const Frame& frame_a;
  const CellSolid& b;
  const Frame& frame_b;
};

// Both ways along every axis that may part two prisms: `look(distance, axis, owner)`, the owner 0
// or 1 where the axis is square to a face of a or b, else 2.
template <class Look>
void each_axis(const Axes& x, Look look) {
  const auto along = [&](Vec3 axis, int owner) {
    const Reach ra = reach_of(x.a, x.frame_a, axis), rb = reach_of(x.b, x.frame_b, axis);
    look(rb.low - ra.high, axis, owner);
    look(ra.low - rb.high, -axis, owner);
  };
  for (Vec3 n : x.a.normals) along(in_room(x.frame_a, n), 0);
  for (Vec3 n : x.b.normals) along(in_room(x.frame_b, n), 1);
  for (Vec3 ea : x.a.edges)
    for (Vec3 eb : x.b.edges) {
      const Vec3 axis = cross(in_room(x.frame_a, ea), in_room(x.frame_b, eb));
      const double length = norm(axis);
      if (length > 1e-6) along((1 / length) * axis, 2);
    }
}

void add_direction(std::vector<Vec3>& list, Vec3 d) {
  const auto same = [&](Vec3 e) { return std::abs(dot(d, e)) > 1 - 1e-12; };
  if (std::none_of(list.begin(), list.end(), same)) list.push_back(d);
}

PartingPlane plane_along(const CellSolid& holder, const Frame& fh, const CellSolid& other,
                         Vec3 axis) {
  PartingPlane plane{holder.piece, other.piece, {}, reach_of(holder, fh, axis).high, other.corners};
  plane.normal = {dot(axis, fh.u), dot(axis, fh.v), dot(axis, fh.w)};
  plane.offset -= dot(axis, fh.at);
  return plane;
}

}  // namespace

std::vector<CellSolid> solids_of(const Body& body, int piece) {
  std::vector<CellSolid> solids;
  for (const Polygon& cell : body.cells) {
    CellSolid solid{piece, {}, {{0, 0, 1}}, {{0, 0, 1}}};
    for (double w : {0.0, body.thickness})
      for (Vec2 p : cell) solid.corners.push_back({p.x, p.y, w});
    for (std::size_t i = 0; i < cell.size(); ++i) {
      const Vec2 d = cell[(i + 1) % cell.size()] - cell[i];
      const double length = norm(d);
      if (length < 1e-9) continue;
      add_direction(solid.edges, {d.x / length, d.y / length, 0});
      add_direction(solid.normals, {-d.y / length, d.x / length, 0});
    }
    solids.push_back(std::move(solid));
  }
  return solids;
}

Apart apart(const CellSolid& a, const Frame& frame_a, const CellSolid& b, const Frame& frame_b) {
  Apart best{-std::numeric_limits<double>::infinity(), {}};
  each_axis({a, frame_a, b, frame_b}, [&](double distance, Vec3 axis, int) {
    if (distance > best.distance + kSameAxis) best = {distance, axis};
  });
  return best;
}

std::vector<Parting> partings_of(const std::vector<CellSolid>& a, const Frame& frame_a,
                                 const std::vector<CellSolid>& b, const Frame& frame_b) {
  std::vector<Parting> partings;
  for (const CellSolid& ca : a)
    for (const CellSolid& cb : b) {
      Parting parting{ca.piece, cb.piece, {}};
      double most = -std::numeric_limits<double>::infinity();
      each_axis({ca, frame_a, cb, frame_b}, [&](double distance, Vec3 axis, int owner) {
        most = std::max(most, distance);
        if (distance < -kDrawnOverlap || owner == 2) return;
        parting.planes.push_back(owner == 0 ? plane_along(ca, frame_a, cb, axis)
                                            : plane_along(cb, frame_b, ca, -axis));
      });
      if (most <= kNear && !parting.planes.empty()) partings.push_back(std::move(parting));
    }
  return partings;
}

std::vector<PartedCorner> parted(const PartingPlane& plane, const Frame& holder, const Frame& other,
                                 Vec3& normal) {
  normal = in_room(holder, plane.normal);
  const double offset = plane.offset + dot(normal, holder.at);
  std::vector<PartedCorner> corners;
  for (Vec3 c : plane.corners) {
    const Vec3 q = other.room_from_piece(c);
    corners.push_back({dot(normal, q) - offset, q});
  }
  return corners;
}

}  // namespace nook
