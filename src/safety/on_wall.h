// Pieces and obstacles as patches of a wall.
#pragma once

#include <optional>

#include "safety/scene.h"

namespace nook::safe {

/// A patch of a wall in base-line coordinates, mm: along, and z.
struct Patch {
  int wall = 0;
  Vec2 low, high;
};
/// What a piece covers, seen square on.
Patch patch_of(const Scene& scene, int wall, const Body& body);
/// Where an obstacle is; nothing where its height counts from a level line that nothing places.
std::optional<Patch> patch_of(const Scene& scene, int wall, const Obstacle& obstacle);

/// Whether two patches share a stretch of along, and of height.
bool share_along(const Patch& a, const Patch& b);
bool share_height(const Patch& a, const Patch& b);

/// The survey's wall that a fastening goes into, or -1.
int wall_into(const Scene& scene, const Fastening& fastening);

}  // namespace nook::safe
