// The pieces as they will stand, in the room as found: what every check looks at.
#pragma once

#include <string>
#include <vector>

#include "base/measured.h"
#include "safety/air.h"
#include "safety/audience.h"
#include "safety/safety.h"
#include "safety/sight.h"

namespace nook::safe {

struct Scene {
  const SafetyInput& in;
  Audience audience;
  std::vector<Measured> sink;  // of each piece, mm into the covering under load
  std::vector<Body> bodies;    // as installed: sunk by that much

  const Piece& piece(int k) const { return in.pieces[k]; }
  const Part& part(int k) const { return *in.pieces[k].drawn; }
  const Stock& stock(int k) const { return in.design.stock[part(k).stock]; }
  /// The room's surfaces may be looked at.
  bool room_known() const { return in.complete; }
};
/// The pieces sunk into the covering by what stands on it.
Scene scene_of(const SafetyInput& input);

/// "front panel", "left wall", "floor"; empty for fills.
std::string name_of(const Scene& scene, Owner owner);

/// "between deck, rung 3 and left wall", or the one name: pieces in file order, then walls. Fills
/// are left out.
std::string between(const Scene& scene, std::vector<Owner> owners);

/// A spot of something.
struct Spot {
  Owner owner;
  Vec3 at;
};
/// The sd of how far two spots are apart along a direction (unit): what the readings leave open of
/// the walls, floor and ceiling there, and how far feet sink.
double spread(const Scene& scene, const Spot& a, const Spot& b, Vec3 direction);

/// The height above the floor of a spot of something; of z = 0 where the room is not known.
Measured height_of(const Scene& scene, Owner owner, Vec3 at);

/// What stands in a slab, seen square on.
struct View {
  Sight sight;
  Slab slab;
  Window window;  // shows every piece of the slab, with a margin round it
  Air air;        // pieces and, where it is known, the room
};
/// `margin`: mm of air round the pieces.
View view_of(const Scene& scene, const Sight& sight, Slab slab, double margin);

/// Whether a point is in a piece, or behind a wall's face.
bool in_body(const Body& body, Vec3 p);
bool in_wall(const Scene& scene, Vec3 p);

}  // namespace nook::safe
