// Panels by their faces, sticks by the planes that they share.
#include "safety/look.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace nook::safe {
namespace {

// Planes that are this close and turned by less than this are one. Chosen: a stick's thickness.
constexpr double kSamePlane = 38;  // mm
const double kSameWay = std::cos(2 * std::numbers::pi / 180);
// A stick lies in a plane when its long way is square to the plane's normal within this.
const double kLiesIn = std::sin(5 * std::numbers::pi / 180);
const double kFacing = std::cos(std::numbers::pi / 6);  // a wall within 30 degrees closes a plane
constexpr double kMargin = 300;  // mm of air shown round the pieces; chosen, more than a head

Vec3 middle_of(const Body& body) {
  const Box2 box = box_of(body.region.outline);
  const Vec2 middle = 0.5 * (box.low + box.high);
  return body.frame.room_from_piece({middle.x, middle.y, body.piece->thickness / 2});
}

bool seen_already(const std::vector<Plane>& planes, Vec3 at, Vec3 normal) {
  return std::any_of(planes.begin(), planes.end(), [&](const Plane& plane) {
    return std::abs(dot(plane.sight.n, normal)) > kSameWay &&
           std::abs(plane.sight.depth(at)) < kSamePlane;
  });
}

bool shares(const std::vector<std::optional<Stick>>& sticks, std::size_t self, Vec3 normal) {
  for (std::size_t k = 0; k < sticks.size(); ++k) {
    if (k == self || !sticks[k]) continue;
    const double off = dot(sticks[k]->middle - sticks[self]->middle, normal);
    if (std::abs(off) < kSamePlane && std::abs(dot(sticks[k]->along, normal)) < kLiesIn)
      return true;
  }
  return false;
}

}  // namespace

std::optional<Stick> stick_of(const Body& body) {
  const Box2 box = box_of(body.region.outline);
  const Vec2 size = box.high - box.low;
  const bool long_u = size.x >= size.y;
  const double width = std::min(size.x, size.y), thickness = body.piece->thickness;
  if (width > kStickWidth || thickness > kStickWidth) return {};
  return Stick{middle_of(body),
               long_u ? body.frame.u : body.frame.v,
               std::max(size.x, size.y),
               {body.frame.w, long_u ? body.frame.v : body.frame.u},
               {thickness, width}};
}

std::vector<Plane> planes_of(const Scene& scene) {
  std::vector<std::optional<Stick>> sticks;
  for (const Body& body : scene.bodies) sticks.push_back(stick_of(body));
  std::vector<Plane> planes;
  const auto add = [&](Vec3 at, Vec3 normal, double thickness) {
    if (!seen_already(planes, at, normal))
      planes.push_back({sight_across(at, normal), thickness / 2});
  };
  for (std::size_t k = 0; k < sticks.size(); ++k)
    if (!sticks[k])
      add(middle_of(scene.bodies[k]), scene.bodies[k].frame.w, scene.bodies[k].piece->thickness);
  for (std::size_t k = 0; k < sticks.size(); ++k)
    for (int way = 0; sticks[k] && way < 2; ++way)
      if (shares(sticks, k, sticks[k]->across[way]))
        add(sticks[k]->middle, sticks[k]->across[way], sticks[k]->size[way]);
  return planes;
}

std::vector<Look> looks_of(const Scene& scene) {
  std::vector<Look> looks;
  for (const Plane& plane : planes_of(scene)) {
    const double reach = plane.half + mm(Of::probe_depth);
    View view = view_of(scene, plane.sight, {-reach, reach}, kMargin);
    if (!view.air.shadows().empty()) looks.push_back({plane, std::move(view)});
  }
  return looks;
}

bool blind(const Scene& scene, const Plane& plane, Vec2 at) {
  if (!scene.room_known()) return false;
  const Vec3 p = plane.sight.room(at);
  const double reach = plane.half + mm(Of::probe_depth);
  for (const WallShape& wall : scene.in.room.walls)
    if (std::abs(dot(plane.sight.n, {wall.out.x, wall.out.y, 0})) > kFacing &&
        before(wall, p) < reach)
      return true;
  return std::abs(plane.sight.n.z) > kFacing && p.z - scene.in.room.floor.z({p.x, p.y}) < reach;
}

double rim_sd(const Scene& scene, const Sight& sight, const std::vector<Touch>& rim) {
  double sd = 0;
  for (std::size_t i = 1; i < rim.size(); ++i) {
    const Vec2 d = rim[i].at - rim[0].at;
    if (norm(d) == 0) continue;
    const Vec3 way = (1 / norm(d)) * (d.x * sight.s + d.y * sight.t);
    sd = std::max(sd, spread(scene, {rim[0].owner, sight.room(rim[0].at)},
                             {rim[i].owner, sight.room(rim[i].at)}, way));
  }
  return sd;
}

}  // namespace nook::safe
