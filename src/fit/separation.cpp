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

// Keeps the axis along which the two are furthest apart; of equal ones the first, an upright one
// before any other, so that what rests on a piece is not pushed off it.
void keep_better(Apart& best, const Apart& next) {
  const bool upright = std::abs(next.axis.z) > 0.9 && std::abs(best.axis.z) <= 0.9;
  if (next.distance > best.distance + kSameAxis ||
      (upright && next.distance > best.distance - kSameAxis))
    best = next;
}

void try_axis(const CellSolid& a, const Frame& fa, const CellSolid& b, const Frame& fb, Vec3 axis,
              Apart& best) {
  const Reach ra = reach_of(a, fa, axis), rb = reach_of(b, fb, axis);
  keep_better(best, {rb.low - ra.high, axis});
  keep_better(best, {ra.low - rb.high, -axis});
}

void try_crossed(const CellSolid& a, const Frame& fa, const CellSolid& b, const Frame& fb,
                 Apart& best) {
  for (Vec3 ea : a.edges)
    for (Vec3 eb : b.edges) {
      const Vec3 axis = cross(in_room(fa, ea), in_room(fb, eb));
      const double length = norm(axis);
      if (length > 1e-6) try_axis(a, fa, b, fb, (1 / length) * axis, best);
    }
}

void add_direction(std::vector<Vec3>& list, Vec3 d) {
  const auto same = [&](Vec3 e) { return std::abs(dot(d, e)) > 1 - 1e-12; };
  if (std::none_of(list.begin(), list.end(), same)) list.push_back(d);
}

// Whether the axis is square to one of the solid's own faces.
bool owns(const CellSolid& solid, const Frame& frame, Vec3 axis) {
  return std::any_of(solid.normals.begin(), solid.normals.end(),
                     [&](Vec3 n) { return std::abs(dot(in_room(frame, n), axis)) > 1 - 1e-9; });
}

Parting parting_along(const CellSolid& holder, const Frame& fh, const CellSolid& other, Vec3 axis) {
  Parting parting{holder.piece, other.piece, {}, reach_of(holder, fh, axis).high, other.corners};
  parting.normal = {dot(axis, fh.u), dot(axis, fh.v), dot(axis, fh.w)};
  parting.offset -= dot(axis, fh.at);
  return parting;
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
  for (Vec3 n : a.normals) try_axis(a, frame_a, b, frame_b, in_room(frame_a, n), best);
  for (Vec3 n : b.normals) try_axis(a, frame_a, b, frame_b, in_room(frame_b, n), best);
  try_crossed(a, frame_a, b, frame_b, best);
  return best;
}

std::vector<Parting> partings_of(const std::vector<CellSolid>& a, const Frame& frame_a,
                                 const std::vector<CellSolid>& b, const Frame& frame_b) {
  std::vector<Parting> partings;
  for (const CellSolid& ca : a)
    for (const CellSolid& cb : b) {
      const Apart best = apart(ca, frame_a, cb, frame_b);
      if (best.distance < -kDrawnOverlap || best.distance > kNear) continue;
      if (owns(ca, frame_a, best.axis) || !owns(cb, frame_b, best.axis))
        partings.push_back(parting_along(ca, frame_a, cb, best.axis));
      else
        partings.push_back(parting_along(cb, frame_b, ca, -best.axis));
    }
  return partings;
}

}  // namespace nook
