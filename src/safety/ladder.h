// Ladders: equal level sticks one above another, known by their shape and place alone.
#pragma once

#include <optional>
#include <vector>

#include "safety/deck.h"
#include "safety/look.h"

namespace nook::safe {

struct Ladder {
  std::vector<int> rungs;      // from the bottom up; treads too
  std::vector<int> rails;      // pieces at the ends of rungs
  std::optional<int> deck;     // the one it leads to
  Vec3 along;                  // of the rungs: unit, level
  Vec3 towards;                // unit, level, square to the rungs: to the deck, where there is one
  double length = 0;           // of a rung
  double deep = 0, thick = 0;  // of a rung: level across it, and upright
  bool treads() const;         // flat ones
};

/// 1. Rungs are at least two level sticks of equal size, parallel, one above another by 4 to 24 in
///    and not over 30 in long, with nothing against the middle of their long sides (a cleat is no
///    rung).
/// 2. Sticks that all lie above the deck beside them are rails of a guard, no rungs.
std::vector<Ladder> ladders_of(const Scene& scene, const std::vector<Deck>& decks);

/// Room z of the top of a level piece.
double top_of(const Body& body);

/// Where a ladder stands before a side of its deck, rails included: from and to along the side's
/// sight; nothing where it leads up elsewhere.
std::optional<Stretch> way_up(const Scene& scene, const Ladder& ladder, const Side& side);
/// Fills Side::ways_up of every deck.
void mark_ways_up(const Scene& scene, const std::vector<Ladder>& ladders, std::vector<Deck>& decks);

}  // namespace nook::safe
