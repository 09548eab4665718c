// The checks of a design that do not look for openings, guards or rungs. Decks are those over 20
// in.
#pragma once

#include "safety/cautions.h"
#include "safety/deck.h"
#include "safety/holding.h"
#include "safety/ladder.h"

namespace nook::safe {

/// How far one falls, and where heads are bumped.
void heights(const Scene& scene, const std::vector<Deck>& decks, Cautions& cautions);
/// Loads that the design states for decks, guards, rungs and feet.
void loads(const Scene& scene, const std::vector<Deck>& decks, const std::vector<Ladder>& ladders,
           Cautions& cautions);
/// What guards a deck and hangs in the air, or on one of its ends.
void guard_hold(const Scene& scene, const std::vector<Deck>& decks,
                const std::vector<Ladder>& ladders, Cautions& cautions);
/// Windows, heaters, cords, the way out, alarms.
void surroundings(const Scene& scene, const std::vector<Deck>& decks, Cautions& cautions);
/// What tips over; what is lifted.
void standing(const Scene& scene, const Holding& holding, Cautions& cautions);
/// Cables and pipes behind what is screwed to a wall.
void services(const Scene& scene, Cautions& cautions);
/// Old paint, new paint, carpet, screws that work loose.
void practice(const Scene& scene, const std::vector<Deck>& decks,
              const std::vector<Ladder>& ladders, Cautions& cautions);

}  // namespace nook::safe
