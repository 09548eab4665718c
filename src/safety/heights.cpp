// Falls and bumps.
#include <algorithm>

#include "safety/checks.h"

namespace nook::safe {
namespace {

// The least room between the deck, or the mattress on it, and the ceiling.
Measured head_room(const Scene& scene, const Deck& deck) {
  const LevelSurface& ceiling = *scene.in.room.ceiling;
  Vec3 lowest = deck.middle;
  for (int k : deck.pieces)
    for (Vec2 p : scene.bodies[k].region.outline) {
      const Vec3 at = scene.bodies[k].frame.room_from_piece({p.x, p.y, 0});
      if (ceiling.z({at.x, at.y}) < ceiling.z({lowest.x, lowest.y}))
        lowest = {at.x, at.y, deck.top};
    }
  const Vec3 above{lowest.x, lowest.y, ceiling.z({lowest.x, lowest.y})};
  const double sd = spread(scene, {{Owner::Kind::piece, deck.lead()}, lowest},
                           {{Owner::Kind::ceiling, 0}, above}, {0, 0, 1});
  return {above.z - deck.top - scene.audience.mattress, sd};
}

void judge_above(const Scene& scene, const Deck& deck, Cautions& cautions) {
  const std::string where = name_of(scene, deck);
  const Measured room = head_room(scene, deck);
  const std::string from = scene.audience.mattress > 0 ? "mattress" : where;
  cautions.say({"head-room",
                where,
                {"Between the {} and the ceiling there is {}.", {from, room}},
                {},
                std::string(words(Known::no_source)),
                room});
  cautions.judge(chance_at_least(room, mm(Of::sitting_room)),
                 {"head-room-low",
                  where,
                  {"Between the {} and the ceiling there is {}: nobody sits up under {}.",
                   {from, room, Of::sitting_room}},
                  {Of::sitting_room},
                  "",
                  room});
}

void judge_below(const Scene& scene, const Deck& deck, Cautions& cautions) {
  const Vec3 under{deck.middle.x, deck.middle.y, deck.underside};
  const Measured room = height_of(scene, {Owner::Kind::piece, deck.lead()}, under);
  cautions.judge(
      chance_at_least(room, mm(Of::standing_room)),
      {"bump-under-deck",
       name_of(scene, deck),
       {"Heads are bumped under it: {} up from below, under {}. Round its edges over, and "
        "sink the screws.",
        {room, Of::standing_room}},
       {Of::standing_room},
       "",
       room});
}

}  // namespace

void heights(const Scene& scene, const std::vector<Deck>& decks, Cautions& cautions) {
  for (const Deck& deck : decks) {
    const Measured drop = drop_of(scene, deck);
    cautions.say({"fall-height",
                  name_of(scene, deck),
                  {"A fall from here is {} onto the floor; no floor of a room softens it.", {drop}},
                  {},
                  std::string(words(Known::no_source)),
                  drop});
    if (scene.room_known() && scene.in.room.ceiling) judge_above(scene, deck, cautions);
    judge_below(scene, deck, cautions);
  }
}

}  // namespace nook::safe
