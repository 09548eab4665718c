// Guards round decks and rails round beds, as installed, of decks that want them by their height.
#pragma once

#include "safety/cautions.h"
#include "safety/fence.h"

namespace nook::safe {

/// What is wanted of a deck that nobody sleeps on: barrier or guard, its height, openings in it.
void guards(const Scene& scene, const std::vector<Deck>& decks, Cautions& cautions);
/// Cutouts of decks that let a head through.
void deck_holes(const Scene& scene, const std::vector<Deck>& decks,
                const std::vector<Ladder>& ladders, Cautions& cautions);
/// What is wanted of a high bed: rails on each side, the wall side too, gaps beside them, the gap
/// to the wall, the age of the sleeper.
void bed_rails(const Scene& scene, const std::vector<Deck>& decks, Cautions& cautions);

/// "deck, edge at the left wall", "deck, edge away from the right wall".
std::string edge_name(const Scene& scene, const Deck& deck, const Side& side);
std::string edge_name(const Fence& fence);
/// The height of a fence at its lowest, with its plus-or-minus.
Measured height_of(const Fence& fence, const FenceStretch& low);

}  // namespace nook::safe
