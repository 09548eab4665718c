// Rungs, treads, and what holds a ladder and those who climb it.
#pragma once

#include "safety/cautions.h"
#include "safety/holding.h"
#include "safety/ladder.h"

namespace nook::safe {

/// Grip, spacing, evenness, room for toes, handhold.
void rungs(const Scene& scene, const std::vector<Deck>& decks, const Ladder& ladder,
           Cautions& cautions);
/// Whether it can slide, and what its rungs are screwed with.
void ladder_hold(const Scene& scene, const Ladder& ladder, const Holding& holding,
                 Cautions& cautions);

}  // namespace nook::safe
