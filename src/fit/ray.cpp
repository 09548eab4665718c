// Every surface met is a plane near the ray: q(p) = g . p + const. The gap along unit d to q = Q is
// (Q - q(p)) / (g . d), and its slope as the piece moves is -g / (g . d).
#include "fit/ray.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace nook {
namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();

// A face that the ray meets at less than 30 degrees is run along, not met. From the rule for walls.
constexpr double kGrazing = -0.5;

// One coordinate of the room along the ray.
struct Along {
  double start = 0;  // q at the ray's start
  Vec3 g;
};

Hit met_at(double wanted, const Along& q, const Ray& ray) {
  const double rate = dot(q.g, ray.way);
  Hit hit;
  hit.gap = (wanted - q.start) / rate;
  hit.slope = (-1 / rate) * q.g;
  hit.at = ray.from + hit.gap * ray.way;
  return hit;
}

Vec3 level(Vec2 p) {
  return {p.x, p.y, 0};
}

// How far the ray's start stands out of the wall's surface.
Along out_of_wall(const WallShape& wall, double field, const Ray& ray) {
  const Vec2 at = wall.wall_from_room(plan(ray.from));
  const double surface = wall.lean * ray.from.z + field + SiteView::buildup(wall, at.x);
  return {at.y - surface, level(wall.out) + Vec3{0, 0, -wall.lean}};
}

Along above(const LevelSurface& surface, double field, const Ray& ray) {
  const double z = surface.offset + dot(surface.slope, plan(ray.from)) + field;
  return {ray.from.z - z, Vec3{-surface.slope.x, -surface.slope.y, 1}};
}

Hit surface_met(const RoomShape& room, Surface surface, double field, const Ray& ray) {
  if (surface.kind == Surface::Kind::wall)
    return met_at(0, out_of_wall(room.walls[surface.wall], field, ray), ray);
  const bool floor = surface.kind == Surface::Kind::floor;
  return met_at(0, above(floor ? room.floor : *room.ceiling, field, ray), ray);
}

// The stretch of the ray within low <= q <= high and which bound it comes in by.
struct Slab {
  double from = -kInfinite, to = kInfinite;
  double bound = 0;
  Along q;
};
Slab slab(const Along& q, double low, double high, Vec3 way) {
  const double rate = dot(q.g, way);
  if (std::abs(rate) < 1e-9)
    return q.start >= low && q.start <= high ? Slab{-kInfinite, kInfinite, 0, q}
                                             : Slab{kInfinite, -kInfinite, 0, q};
  const double first = rate > 0 ? low : high, last = rate > 0 ? high : low;
  return {(first - q.start) / rate, (last - q.start) / rate, first, q};
}

// A ray towards a wall, how far out of it it starts, and how far back a block is still met.
struct WallRay {
  const SiteView& view;
  int wall;
  const Ray& ray;
  Along out;
  double behind;
};

std::optional<Hit> one_block(const WallRay& look, const BlockHere& here) {
  const auto& [view, wall, ray, out, behind] = look;
  const Block& block = *here.block;
  const WallShape& shape = view.shape().walls[wall];
  const double a = shape.wall_from_room(plan(ray.from)).x;
  const double low = view.z_of(block.height_from, wall, a);
  const double high = view.z_of(block.height_to, wall, a);
  const Along height{ray.from.z - low, {0, 0, 1}};
  Along front = out;  // how far out of the sloping front
  front.start -= block.slope * height.start;
  front.g = front.g - block.slope * height.g;
  const Slab slabs[] = {slab({a, level(shape.along)}, here.a_from, here.a_to, ray.way),
                        slab(height, 0, high - low, ray.way),
                        slab(front, block.out_from, block.out_to, ray.way)};
  const Slab* in = &slabs[0];
  double to = kInfinite;
  for (const Slab& s : slabs) {
    if (s.from > in->from) in = &s;
    to = std::min(to, s.to);
  }
  if (in->from > to || to < -behind || !std::isfinite(in->from) || in->from > kReach)
    return std::nullopt;
  return met_at(in->bound, in->q, ray);
}

}  // namespace

Ray ray_of(const Feeler& feeler, const Frame& frame) {
  const Vec3 d = feeler.way;
  return {frame.room_from_piece(feeler.at), d.x * frame.u + d.y * frame.v + d.z * frame.w};
}

Hit surface_hit(const SiteView& view, const SurfaceField& fields, Surface surface,
                const Feeler& feeler, const Ray& ray) {
  return surface_met(view.shape(), surface, fields.value(feeler.spot, view.room()), ray);
}

double rough_gap(const RoomShape& room, Surface surface, Vec2 spot, const Ray& ray) {
  return surface_met(room, surface, field_height(room, surface, spot), ray).gap;
}

std::optional<Hit> block_hit(const SiteView& view, const SurfaceField& fields, Surface surface,
                             const Feeler& feeler, const Ray& ray) {
  if (feeler.blocks.empty()) return std::nullopt;
  const double field = fields.value(feeler.spot, view.room());
  const WallRay look{view, surface.wall, ray,
                     out_of_wall(view.shape().walls[surface.wall], field, ray), feeler.behind};
  std::optional<Hit> first;
  for (int b : feeler.blocks) {
    std::optional<Hit> hit = one_block(look, view.blocks(surface.wall)[b]);
    if (!hit || (first && first->gap <= hit->gap)) continue;
    first = hit;
    first->block = b;
  }
  return first;
}

Vec2 spot_of(const RoomShape& room, Surface surface, Vec3 at) {
  if (surface.kind != Surface::Kind::wall) return plan(at);
  return {room.walls[surface.wall].wall_from_room(plan(at)).x, at.z};
}

std::optional<Hit> part_hit(const std::vector<Standing>& parts, const Ray& ray) {
  std::optional<Hit> nearest;
  for (const Standing& part : parts) {
    const Frame& f = part.frame;
    const Vec3 from = f.piece_from_room(ray.from);
    const Vec3 way{dot(ray.way, f.u), dot(ray.way, f.v), dot(ray.way, f.w)};
    const auto hit = first_hit(*part.body, from, way, kReach);
    if (!hit || hit->distance > kReach || dot(hit->normal, way) > kGrazing) continue;
    if (nearest && std::abs(nearest->gap) <= std::abs(hit->distance)) continue;
    const PartFace face{part.piece, hit->normal, dot(hit->normal, from + hit->distance * way)};
    nearest = face_hit({part}, face, ray);
  }
  return nearest;
}

std::optional<Hit> face_hit(const std::vector<Standing>& parts, const PartFace& face,
                            const Ray& ray) {
  for (const Standing& part : parts) {
    if (part.piece != face.piece) continue;
    const Frame& f = part.frame;
    const Vec3 n = face.normal.x * f.u + face.normal.y * f.v + face.normal.z * f.w;
    Hit hit = met_at(face.offset + dot(n, f.at), {dot(n, ray.from), n}, ray);
    hit.face = face;
    return hit;
  }
  return std::nullopt;
}

}  // namespace nook
