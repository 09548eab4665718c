// Spots on the outlines, and on faces that lie along a surface, within reach of the surface.
#include "fit/guard.h"

#include <algorithm>
#include <cmath>

#include "fit/joint_builder.h"
#include "fit/touching.h"
#include "solid/simplified.h"

namespace nook {
namespace {

constexpr double kNear = 80;  // mm; pieces further off are not pushed so far. Chosen
constexpr double kStep = 50;  // mm between spots; chosen
// Corners that stray less from the line of the others are none.
constexpr double kStray = kTouching;
constexpr double kFlat = 0.9;  // cosine; a face this parallel to a surface is looked at all over

Vec3 inward(const RoomShape& room, Surface surface) {
  if (surface.kind == Surface::Kind::wall) {
    const Vec2 out = room.walls[surface.wall].out;
    return {out.x, out.y, 0};
  }
  return {0, 0, surface.kind == Surface::Kind::floor ? 1.0 : -1.0};
}

double rough_distance(const RoomShape& room, Surface surface, Vec3 p) {
  if (surface.kind == Surface::Kind::wall) {
    const WallShape& wall = room.walls[surface.wall];
    return wall.wall_from_room(plan(p)).y - wall.lean * p.z;
  }
  const double z = surface.kind == Surface::Kind::floor ? room.floor.offset : room.ceiling->offset;
  return surface.kind == Surface::Kind::floor ? p.z - z : z - p.z;
}

// Corners that stand out, and between them a spot every kStep.
std::vector<Vec2> outline_spots(const Polygon& ring) {
  const Polygon kept = simplified(ring, kStray);
  std::vector<Vec2> spots;
  std::size_t next = 0;
  double since = 0;  // the last spot, along the ring
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2 a = ring[i], d = ring[(i + 1) % ring.size()] - a;
    const bool corner = next < kept.size() && norm(kept[next] - a) == 0;
    if (corner) ++next;
    const int n = std::max(1, static_cast<int>(std::ceil(norm(d) / kStep)));
    if (corner || n > 1 || since + norm(d) > kStep) spots.push_back(a), since = 0;
    for (int k = 1; k < n; ++k) spots.push_back(a + (static_cast<double>(k) / n) * d);
    since += norm(d) / n;
  }
  return spots;
}

std::vector<Vec2> face_spots(const Region& region) {
  const Box2 box = box_of(region.outline);
  std::vector<Vec2> spots;
  for (double v = box.low.y + kStep; v < box.high.y; v += kStep)
    for (double u = box.low.x + kStep; u < box.high.x; u += kStep)
      if (contains(region, {u, v})) spots.push_back({u, v});
  return spots;
}

struct Watched {
  const Scene& scene;
  const std::vector<Joint>& joints;
  const RoomShape& room;
  const Frame& frame;
};

// Quickly: beyond kNear of the box round two points.
bool far_off(Vec2 a, Vec2 b, Vec2 p) {
  const auto off = [](double from, double to, double x) {
    return x < std::min(from, to) - kNear || x > std::max(from, to) + kNear;
  };
  return off(a.x, b.x, p.x) || off(a.y, b.y, p.y);
}

// Spots that a contact's own notch takes are left out, and those right on its edge: the contact's
// feelers are there.
bool watched(const Watched& w, const Guard& guard, Vec2 uv) {
  for (const Joint& joint : w.joints) {
    if (joint.piece != guard.piece || joint.face || !(joint.meets == guard.surface)) continue;
    for (std::size_t i = 0; i + 1 < joint.spots.size(); ++i) {
      const JointSpot &a = joint.spots[i], &b = joint.spots[i + 1];
      if (far_off(a.uv, b.uv, uv)) continue;
      const double distance = segment_distance(a.uv, b.uv, uv);
      if (distance < 0.01 || (distance < kNear && a.notched && b.notched)) return false;
    }
  }
  return true;
}

// What each notch of the piece for that wall lets through is no hindrance.
void leave_notched(const std::vector<Joint>& joints, Guard& guard) {
  for (const Joint& joint : joints)
    if (joint.piece == guard.piece && joint.meets == guard.surface && joint.how->notch)
      for (Feeler& feeler : guard.feelers) notch_blocks(feeler, joint.stops);
}

bool faced(const std::vector<Joint>& joints, const Guard& guard) {
  return std::any_of(joints.begin(), joints.end(), [&](const Joint& j) {
    return j.piece == guard.piece && j.meets == guard.surface && j.face;
  });
}

Guard guard_of(const Watched& w, Site& site, int piece, Surface surface) {
  Guard guard{piece, surface, {}};
  const Body& body = w.scene.bodies[piece];
  const Vec3 in = inward(w.room, surface);
  const Vec3 way{-dot(in, w.frame.u), -dot(in, w.frame.v), -dot(in, w.frame.w)};
  const auto add = [&](Vec2 uv, double z) {
    const Vec3 at = at_face(uv, z);
    if (rough_distance(w.room, surface, w.frame.room_from_piece(at)) > kNear) return;
    if (!watched(w, guard, uv)) return;
    guard.feelers.push_back(feeler_for(site, surface, w.frame, at, way, true));
  };
  for (Vec2 uv : outline_spots(body.region.outline))
    for (double z : {0.0, body.thickness}) add(uv, z);
  if (std::abs(way.z) > kFlat)
    for (Vec2 uv : face_spots(body.region)) add(uv, way.z < 0 ? 0 : body.thickness);
  leave_notched(w.joints, guard);
  return guard;
}

}  // namespace

std::vector<Guard> guards_of(const Scene& scene, Site& site, const std::vector<Frame>& frames,
                             const std::vector<Joint>& joints) {
  const RoomShape& room = site.fields().room(0);
  std::vector<Surface> surfaces;
  for (int w = 0; w < static_cast<int>(room.walls.size()); ++w)
    surfaces.push_back({Surface::Kind::wall, w});
  surfaces.push_back({Surface::Kind::floor, 0});
  if (room.ceiling) surfaces.push_back({Surface::Kind::ceiling, 0});
  std::vector<Guard> guards;
  for (int p = 0; p < static_cast<int>(scene.pieces.size()); ++p)
    for (Surface surface : surfaces) {
      Guard guard = guard_of({scene, joints, room, frames[p]}, site, p, surface);
      if (!guard.feelers.empty() && !faced(joints, guard)) guards.push_back(std::move(guard));
    }
  return guards;
}

}  // namespace nook
