// Decks: level surfaces high and wide enough to be stood on, known by their shape and place alone.
#pragma once

#include <algorithm>
#include <optional>
#include <vector>

#include "safety/scene.h"

namespace nook::safe {

/// A spot of a deck's edge and what stands there.
struct Station {
  /// wall: one stands closer than the width of a head; inner: the deck goes on behind another
  /// piece's edge.
  enum class Kind { open, wall, inner };
  double s = 0;  // along the side's sight
  Kind kind = Kind::open;
  int wall = -1;   // the nearest one that faces the edge, within kWallReach
  double gap = 0;  // mm to it
};
inline constexpr double kWallReach = 300;  // mm; chosen, more than any gap that a limit is about

/// A straight side of a deck. The sight looks at it from outside: t = 0 is the deck's top, s runs
/// along the edge, depth is outward.
struct Side {
  Sight sight;
  std::vector<Station> stations;  // kStationStep apart or less, s rising
  double from = 0, to = 0;        // s of its ends
  std::vector<Stretch> ways_up;   // where ladders stand before it, rails included
};
/// Whether any station of a side is of that kind.
inline bool has_any(const Side& side, Station::Kind kind) {
  return std::any_of(side.stations.begin(), side.stations.end(),
                     [&](const Station& station) { return station.kind == kind; });
}
inline constexpr double kStationStep = 10;  // mm; chosen

struct Deck {
  std::vector<int> pieces;        // side by side, tops level; the first by file order leads
  double top = 0, underside = 0;  // room z, of the leading piece
  double area = 0;                // mm^2
  Vec3 middle;                    // of its top
  std::vector<Side> sides;

  int lead() const { return pieces.front(); }
};

/// 1. A deck is made of level pieces whose tops are level within 1/4 in and that lie no further
///    apart than a sphere of 3.5 in passes; both ways it measures at least 10 in, with 18 in of
///    free room above most of it.
/// 2. Decks come in the order of their leading pieces, all heights; a floor-high one too.
std::vector<Deck> decks_of(const Scene& scene);

/// Height of a deck's top above the floor, the most along its open sides.
Measured drop_of(const Scene& scene, const Deck& deck);

/// The name of its leading piece.
std::string name_of(const Scene& scene, const Deck& deck);

}  // namespace nook::safe
