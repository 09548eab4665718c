// From a spot of a piece along a ray to the first surface: the gap, and how it changes as the piece
// moves.
#pragma once

#include <optional>
#include <vector>

#include "fit/body.h"
#include "fit/motion.h"
#include "fit/site.h"

namespace nook {

/// A face of a part: normal . p = offset in that piece's frame, outward.
struct PartFace {
  int piece = -1;  // -1 = none met
  Vec3 normal;
  double offset = 0;
};

/// A spot of a piece and the way it feels for a surface, both in the piece's frame.
struct Feeler {
  Vec3 at, way;
  int spot = -1;             // of the surface's field; -1 where a part is met
  std::vector<int> blocks;   // of the wall, near enough to be met
  std::vector<int> notched;  // those that the piece is notched for
  double behind = 0;         // how far its piece reaches back: a pipe off the wall may stand there
  PartFace face;             // of a part, as met in the adjusted room
};

/// What a ray met, in the room frame. Gap negative: back to the surface.
struct Hit {
  double gap = 0;
  Vec3 slope;      // of the gap as the piece moves
  Vec3 at;         // where it met
  int block = -1;  // of the wall; -1 = the surface itself or a part
};

/// How far a feeler reaches, mm: beyond it an edge cannot meet. From the gap's definition.
inline constexpr double kReach = 300;

/// A feeler brought into the room.
struct Ray {
  Vec3 from, way;
};
inline Vec3 way_in_room(const Feeler& feeler, const Frame& frame) {
  const Vec3 d = feeler.way;
  return d.x * frame.u + d.y * frame.v + d.z * frame.w;
}
inline Ray ray_of(const Feeler& feeler, const Frame& frame) {
  return {frame.room_from_piece(feeler.at), way_in_room(feeler, frame)};
}

/// Where a ray that starts `short_of` a plane meets it; g: the plane's normal, of any length.
inline Hit met_at(double short_of, Vec3 g, const Ray& ray) {
  const double rate = dot(g, ray.way), gap = short_of / rate;
  return {gap, (-1 / rate) * g, ray.from + gap * ray.way, -1};
}

/// The spot of a surface's field that a ray needs: (along, z) or (x, y).
Vec2 spot_of(const RoomShape& room, Surface surface, Vec3 at);

/// A piece's body where it stands now.
struct Standing {
  int piece = 0;
  const Body* body = nullptr;
  Frame frame;
};
/// The nearest face of several pieces along the ray, and where it is met.
PartFace part_face(const std::vector<Standing>& parts, const Ray& ray);
std::optional<Hit> part_hit(const std::vector<Standing>& parts, const Ray& ray);
/// The same face that was met in the adjusted room; nothing if none was, or its piece is not here.
std::optional<Hit> face_hit(const std::vector<Standing>& parts, const PartFace& face,
                            const Ray& ray);

}  // namespace nook
