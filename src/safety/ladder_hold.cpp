// Screws of ladders.
#include <algorithm>

#include "safety/ladder_cautions.h"

namespace nook::safe {
namespace {

bool holds(const Scene& scene, const Fastening& fastening, int piece) {
  const auto from = pieces_of(scene, fastening);
  const auto to = pieces_named(scene.in.pieces, scene.in.design, fastening.to);
  return std::find(from.begin(), from.end(), piece) != from.end() ||
         std::find(to.begin(), to.end(), piece) != to.end();
}

// Whether screws hold it, and all of them are pocket screws.
bool pocket_only(const Scene& scene, int piece) {
  bool any = false;
  for (const Fastening& fastening : scene.in.design.fastenings) {
    if (!holds(scene, fastening, piece)) continue;
    if (fastening.screw.kind != ScrewKind::pocket) return false;
    any = true;
  }
  return any;
}

}  // namespace

void ladder_hold(const Scene& scene, const Ladder& ladder, const Holding& holding,
                 Cautions& cautions) {
  const std::string where =
      scene.piece(ladder.rungs.front()).name + " to " + scene.piece(ladder.rungs.back()).name;
  const std::string practice(words(Known::no_source));
  if (!holding.to_wall(ladder.rungs.front()))
    cautions.say(
        {"ladder-can-slide",
         where,
         {"Nothing in the design screws this ladder, by itself or through other pieces, to a "
          "wall: it can slide or swing.",
          {}},
         {},
         practice,
         {}});
  const bool pockets = std::any_of(ladder.rungs.begin(), ladder.rungs.end(),
                                   [&](int rung) { return pocket_only(scene, rung); });
  if (pockets)
    cautions.say(
        {"pocket-screwed-rungs",
         where,
         {"Pocket screws hold a rung in place, not a person: let rungs into the rails, or stand "
          "them on cleats, and test them with an adult's weight.",
          {}},
         {},
         practice,
         {}});
}

}  // namespace nook::safe
