// Which face of a part a ray meets first, and where.
#include "fit/ray.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

// A face that the ray meets at less than 30 degrees is run along, not met. From the rule for walls.
constexpr double kGrazing = -0.5;

Hit face_of(const Standing& part, const PartFace& face, const Ray& ray) {
  const Frame& f = part.frame;
  const Vec3 n = face.normal.x * f.u + face.normal.y * f.v + face.normal.z * f.w;
  return met_at(face.offset + dot(n, f.at) - dot(n, ray.from), n, ray);
}

}  // namespace

Vec2 spot_of(const RoomShape& room, Surface surface, Vec3 at) {
  if (surface.kind != Surface::Kind::wall) return plan(at);
  return {room.walls[surface.wall].wall_from_room(plan(at)).x, at.z};
}

PartFace part_face(const std::vector<Standing>& parts, const Ray& ray) {
  PartFace nearest;
  double least = 0;
  for (const Standing& part : parts) {
    const Frame& f = part.frame;
    const Vec3 from = f.piece_from_room(ray.from);
    const Vec3 way{dot(ray.way, f.u), dot(ray.way, f.v), dot(ray.way, f.w)};
    const auto hit = first_hit(*part.body, from, way, kReach);
    if (!hit || hit->distance > kReach || dot(hit->normal, way) > kGrazing) continue;
    if (nearest.piece >= 0 && least <= std::abs(hit->distance)) continue;
    nearest = {part.piece, hit->normal, dot(hit->normal, from + hit->distance * way)};
    least = std::abs(face_of(part, nearest, ray).gap);
  }
  return nearest;
}

std::optional<Hit> part_hit(const std::vector<Standing>& parts, const Ray& ray) {
  return face_hit(parts, part_face(parts, ray), ray);
}

std::optional<Hit> face_hit(const std::vector<Standing>& parts, const PartFace& face,
                            const Ray& ray) {
  for (const Standing& part : parts)
    if (part.piece == face.piece) return face_of(part, face, ray);
  return std::nullopt;
}

}  // namespace nook
