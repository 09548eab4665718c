// Every surface met is a plane near the ray: q(p) = g . p + const. The gap along unit d to q = Q is
// (Q - q(p)) / (g . d), and its slope as the piece moves is -g / (g . d).
#include "fit/surface_ahead.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace nook {
namespace {

// A feeler that runs along a surface, within 6 degrees of it, does not meet it. Chosen.
constexpr double kAlong = 0.1;
constexpr double kInfinite = std::numeric_limits<double>::infinity();

Vec3 level(Vec2 p) {
  return {p.x, p.y, 0};
}

Vec3 out_of(const WallShape& wall) {
  return level(wall.out) + Vec3{0, 0, -wall.lean};
}

Vec3 up_from(const LevelSurface& surface) {
  return {-surface.slope.x, -surface.slope.y, 1};
}

double out_of_wall(const WallShape& wall, double field, double z, Vec2 on_wall) {
  return on_wall.y - (wall.lean * z + field + wall.mud_at(on_wall.x, z));
}

double above(const LevelSurface& surface, double field, Vec3 at) {
  return at.z - (surface.offset + dot(surface.slope, plan(at)) + field);
}

const LevelSurface* level_surface(const RoomShape& room, Surface surface) {
  if (surface.kind == Surface::Kind::floor) return &room.floor;
  return room.ceiling ? &*room.ceiling : nullptr;
}

}  // namespace

SurfaceAhead::SurfaceAhead(const SiteView& view, const SurfaceField& fields, Surface surface,
                           const Frame& frame)
    : view_(view), fields_(fields), surface_(surface), frame_(frame) {
  if (surface.kind == Surface::Kind::wall) {
    wall_ = &view.shape().walls[surface.wall];
    g_ = out_of(*wall_);
  } else {
    level_ = level_surface(view.shape(), surface);
    if (level_) g_ = up_from(*level_);
  }
}

void SurfaceAhead::turn_to(const Feeler& feeler) {
  if (feeler.way == asked_way_) return;
  asked_way_ = feeler.way;
  way_ = way_in_room(feeler, frame_);
  rate_ = dot(g_, way_);
  slope_ = (-1 / rate_) * g_;
}

SurfaceAhead::Start SurfaceAhead::start_of(const Feeler& feeler) const {
  const Vec3 at = frame_.room_from_piece(feeler.at);
  const double field = fields_.value(feeler.spot, view_.room());
  if (!wall_) return {at, 0, above(*level_, field, at)};
  const Vec2 on_wall = wall_->wall_from_room(plan(at));
  return {at, on_wall.x, out_of_wall(*wall_, field, at.z, on_wall)};
}

Hit SurfaceAhead::surface_from(const Start& start) const {
  const double gap = (0 - start.out) / rate_;
  return {gap, slope_, start.at + gap * way_, -1};
}

SurfaceAhead::Slab SurfaceAhead::slab(const Along& q, double low, double high) const {
  const double rate = dot(q.g, way_);
  if (std::abs(rate) < 1e-9)
    return q.start >= low && q.start <= high ? Slab{-kInfinite, kInfinite, 0, q}
                                             : Slab{kInfinite, -kInfinite, 0, q};
  const double first = rate > 0 ? low : high, last = rate > 0 ? high : low;
  return {(first - q.start) / rate, (last - q.start) / rate, first, q};
}

// `behind`: how far back a block is still met.
std::optional<Hit> SurfaceAhead::one_block(const Start& start, const BlockHere& here, double floor,
                                           double behind) const {
  const Block& block = *here.block;
  const double low = view_.z_above(block.height_from, floor);
  const double high = view_.z_above(block.height_to, floor);
  const Along height{start.at.z - low, {0, 0, 1}};
  const Slab upright = slab(height, 0, high - low);
  if (upright.from > upright.to) return std::nullopt;  // most of a molded board's blocks
  Along front{start.out, g_};                          // how far out of the sloping front
  front.start -= block.slope * height.start;
  front.g = front.g - block.slope * height.g;
  const Slab slabs[] = {slab({start.along, level(wall_->along)}, here.a_from, here.a_to), upright,
                        slab(front, block.out_from, block.out_to)};
  const Slab* in = &slabs[0];
  double to = kInfinite;
  for (const Slab& s : slabs) {
    if (s.from > in->from) in = &s;
    to = std::min(to, s.to);
  }
  if (in->from > to || to < -behind || !std::isfinite(in->from) || in->from > kReach)
    return std::nullopt;
  if (std::abs(dot(in->q.g, way_)) < kAlong) return std::nullopt;
  return met_at(in->bound - in->q.start, in->q.g, {start.at, way_});
}

std::optional<Hit> SurfaceAhead::block_from(const Start& start, const std::vector<int>& blocks,
                                            double behind) const {
  const double floor = view_.floor_at_wall(surface_.wall, start.along);
  const std::vector<BlockHere>& here = view_.blocks(surface_.wall);
  std::optional<Hit> first;
  for (int b : blocks) {
    std::optional<Hit> hit = one_block(start, here[b], floor, behind);
    if (!hit || (first && first->gap <= hit->gap)) continue;
    first = hit;
    first->block = b;
  }
  return first;
}

std::optional<Hit> SurfaceAhead::notched(const Feeler& feeler) {
  if (feeler.notched.empty()) return std::nullopt;
  turn_to(feeler);
  return block_from(start_of(feeler), feeler.notched, feeler.behind);
}

std::optional<Hit> SurfaceAhead::first(const Feeler& feeler) {
  turn_to(feeler);
  if (std::abs(rate_) < kAlong) return std::nullopt;
  const Start start = start_of(feeler);
  Hit hit = surface_from(start);
  if (!feeler.blocks.empty())
    if (const auto block = block_from(start, feeler.blocks, feeler.behind);
        block && block->gap < hit.gap)
      hit = *block;
  if (std::abs(hit.gap) > kReach) return std::nullopt;
  return hit;
}

double rough_gap(const RoomShape& room, Surface surface, Vec2 spot, const Ray& ray) {
  const double field = field_height(room, surface, spot);
  if (surface.kind != Surface::Kind::wall) {
    const LevelSurface& flat = *level_surface(room, surface);
    return (0 - above(flat, field, ray.from)) / dot(up_from(flat), ray.way);
  }
  const WallShape& wall = room.walls[surface.wall];
  const Vec2 on_wall = wall.wall_from_room(plan(ray.from));
  return (0 - out_of_wall(wall, field, ray.from.z, on_wall)) / dot(out_of(wall), ray.way);
}

}  // namespace nook
