// Cutouts of a deck that a body falls through.
#include <algorithm>

#include "safety/guards.h"
#include "solid/polygon.h"

namespace nook::safe {
namespace {

constexpr double kMargin = 50;   // mm of air shown round the deck; chosen
constexpr double kWide = 10000;  // mm: wider than any deck

bool holds(const Scene& scene, const Cutout& cutout, int piece, Vec3 p) {
  const Vec3 q = scene.bodies[piece].frame.piece_from_room(p);
  return contains({cutout.outline, {}}, {q.x, q.y});
}

// Whether a ladder comes up through it.
bool climbed(const Scene& scene, const std::vector<Ladder>& ladders, const Cutout& cutout,
             int piece) {
  return std::any_of(ladders.begin(), ladders.end(), [&](const Ladder& ladder) {
    return holds(scene, cutout, piece, stick_of(scene.bodies[ladder.rungs.back()])->middle);
  });
}

void judge(const Scene& scene, const std::vector<Ladder>& ladders, const Deck& deck,
           const LeftOpening& opening, Vec3 at, Cautions& cautions) {
  for (int piece : deck.pieces)
    for (const Cutout& cutout : scene.part(piece).cutouts) {
      if (!holds(scene, cutout, piece, at)) continue;
      const bool way_up = climbed(scene, ladders, cutout, piece);
      const Measured across{opening.across};
      cautions.judge(
          chance_at_most(across, mm(Of::head_large)),
          {"hole-in-deck",
           (cutout.name.empty() ? "cutout" : cutout.name) + " of " + scene.piece(piece).name,
           {"A hole of {} in the deck, {} above the floor: one falls through. Guard it all "
            "round but for the way up, or give it a lid that closes by itself.",
            {across, drop_of(scene, deck)}},
           {Of::head_large, Of::guard_drop},
           "",
           across},
          way_up ? Severity::caution : Severity::danger);
    }
}

}  // namespace

void deck_holes(const Scene& scene, const std::vector<Deck>& decks,
                const std::vector<Ladder>& ladders, Cautions& cautions) {
  for (const Deck& deck : decks) {
    const bool any = std::any_of(deck.pieces.begin(), deck.pieces.end(),
                                 [&](int piece) { return !scene.part(piece).cutouts.empty(); });
    if (!any) continue;
    const double middle = (deck.top + deck.underside) / 2, half = (deck.top - deck.underside) / 2;
    const Sight sight = sight_across({deck.middle.x, deck.middle.y, middle}, {0, 0, 1});
    const View view = view_of(scene, sight, {-half, half}, kMargin);
    for (const LeftOpening& opening :
         openings(view.air, Grid(view.air, view.window), mm(Of::head_large), kWide))
      judge(scene, ladders, deck, opening, sight.room(opening.at), cautions);
  }
}

}  // namespace nook::safe
