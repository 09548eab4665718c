// The planes in which openings are looked for: of each panel, of each ladder, of each frame of
// sticks.
#pragma once

#include <vector>

#include "safety/scene.h"

namespace nook::safe {

/// A stick is at most this wide and thick. Chosen: a 1x6.
inline constexpr double kStickWidth = 140;

/// How a piece lies: its long way, and the two short ones with how far it reaches in each.
struct Stick {
  Vec3 middle, along;
  double length = 0;
  Vec3 across[2];  // w, and the other direction of its outline
  double size[2] = {0, 0};
};
/// Nothing for a panel. `along` is the longer way of the outline.
std::optional<Stick> stick_of(const Body& body);

/// A plane to look at: the middle of a panel or of a row of sticks, and half its thickness.
struct Plane {
  Sight sight;
  double half = 0;
};
/// Each once, in the order of the pieces. Panels flat on a wall have one too; what the wall closes
/// is left out later.
std::vector<Plane> planes_of(const Scene& scene);

/// A plane with all that stands close enough before or behind it to close an opening.
struct Look {
  Plane plane;
  View view;
};
/// One for each plane in which there is anything.
std::vector<Look> looks_of(const Scene& scene);

/// Whether a wall, the floor or the ceiling closes the plane at a spot: closer behind or before it
/// than a probe reaches.
bool blind(const Scene& scene, const Plane& plane, Vec2 at);

/// The sd of the size of a circle that touches these: each of them may move against the first.
double rim_sd(const Scene& scene, const Sight& sight, const std::vector<Touch>& rim);

}  // namespace nook::safe
