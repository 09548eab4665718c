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

/// A cutout that lets a head through.
struct Hole {
  const Cutout* cutout;
  int piece;
  Measured across;
  bool way_up;
};

std::vector<Hole> holes_of(const Scene& scene, const Deck& deck,
                           const std::vector<Ladder>& ladders) {
  const double middle = (deck.top + deck.underside) / 2, half = (deck.top - deck.underside) / 2;
  const Sight sight = sight_across({deck.middle.x, deck.middle.y, middle}, {0, 0, 1});
  const View view = view_of(scene, sight, {-half, half}, kMargin);
  std::vector<Hole> holes;
  for (const LeftOpening& opening :
       openings(view.air, Grid(view.air, view.window), mm(Of::head_large), kWide))
    for (int piece : deck.pieces)
      for (const Cutout& cutout : scene.part(piece).cutouts)
        if (holds(scene, cutout, piece, sight.room(opening.at)))
          holes.push_back(
              {&cutout, piece, {opening.across}, climbed(scene, ladders, cutout, piece)});
  return holes;
}

void judge(const Scene& scene, const Hole& hole, const Measured& drop, Cautions& cautions) {
  const std::string& name = hole.cutout->name;
  const Found found{"hole-in-deck",
                    (name.empty() ? "cutout" : name) + " of " + scene.piece(hole.piece).name,
                    {"A hole of {} in the deck, {} above the floor: one falls through. Guard it "
                     "all round but for the way up, or give it a lid that closes by itself.",
                     {hole.across, drop}},
                    {Of::head_large, Of::guard_drop},
                    "",
                    hole.across};
  cautions.judge(chance_at_most(hole.across, mm(Of::head_large)), found,
                 hole.way_up ? Severity::caution : Severity::danger);
}

}  // namespace

void deck_holes(const Scene& scene, const std::vector<Deck>& decks,
                const std::vector<Ladder>& ladders, Cautions& cautions) {
  for (const Deck& deck : decks) {
    const bool any = std::any_of(deck.pieces.begin(), deck.pieces.end(),
                                 [&](int piece) { return !scene.part(piece).cutouts.empty(); });
    if (!any) continue;
    for (const Hole& hole : holes_of(scene, deck, ladders))
      judge(scene, hole, drop_of(scene, deck), cautions);
  }
}

}  // namespace nook::safe
