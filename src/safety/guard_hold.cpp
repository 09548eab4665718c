// Screws of guards: a rail that is held at one end turns about it.
#include <algorithm>
#include <cmath>

#include "safety/checks.h"
#include "safety/fence.h"
#include "safety/look.h"

namespace nook::safe {
namespace {

constexpr double kAtEnd = 100;    // mm from a rail's end to what holds it; chosen
constexpr double kUpright = 0.5;  // of a stick's way; chosen

bool has(const std::vector<int>& pieces, int piece) {
  return std::find(pieces.begin(), pieces.end(), piece) != pieces.end();
}

bool near(const Body& body, Vec3 p) {
  const Vec3 q = body.frame.piece_from_room(p);
  return q.z > -kAtEnd && q.z < body.piece->thickness + kAtEnd &&
         (contains(body.region, {q.x, q.y}) || border_distance(body.region, {q.x, q.y}) < kAtEnd);
}

// What fastenings join to a piece.
struct Held {
  std::vector<int> by;
  bool to_wall = false;
};
Held held(const Scene& scene, int piece) {
  Held out;
  for (const Fastening& fastening : scene.in.design.fastenings) {
    const auto from = pieces_of(scene, fastening);
    const auto to = pieces_named(scene.in.pieces, scene.in.design, fastening.to);
    if (has(from, piece)) {
      out.by.insert(out.by.end(), to.begin(), to.end());
      out.to_wall |= !wall_named(fastening.to).empty();
    }
    if (has(to, piece)) out.by.insert(out.by.end(), from.begin(), from.end());
  }
  return out;
}

bool held_at(const Scene& scene, const Held& held, Vec3 end) {
  return std::any_of(held.by.begin(), held.by.end(),
                     [&](int other) { return near(scene.bodies[other], end); });
}

bool at_both_ends(const Scene& scene, const Held& held, int piece) {
  const auto stick = stick_of(scene.bodies[piece]);
  // Panels, posts, and what a wall holds along its length.
  if (!stick || held.to_wall || std::abs(stick->along.z) > kUpright) return true;
  const Vec3 reach = (stick->length / 2) * stick->along;
  return held_at(scene, held, stick->middle + reach) && held_at(scene, held, stick->middle - reach);
}

void judge(const Scene& scene, int piece, Cautions& cautions) {
  const Held by = held(scene, piece);
  const bool loose = by.by.empty() && !by.to_wall;
  if (!loose && at_both_ends(scene, by, piece)) return;
  const std::string what =
      loose ? "It guards a deck, and nothing in the design screws it to anything: it gives way "
              "under who leans on it. Screw both its ends."
            : "It guards a deck, and the design screws it at one end alone: it turns about that "
              "under who leans on it. Screw the other end too.";
  cautions.say({"guard-not-held",
                scene.piece(piece).name,
                {what, {}},
                {},
                std::string(words(Known::no_source)),
                {}});
}

}  // namespace

void guard_hold(const Scene& scene, const std::vector<Deck>& decks,
                const std::vector<Ladder>& ladders, Cautions& cautions) {
  std::vector<int> told;
  for (const Ladder& ladder : ladders) {
    told.insert(told.end(), ladder.rungs.begin(), ladder.rungs.end());
    told.insert(told.end(), ladder.rails.begin(), ladder.rails.end());
  }
  for (const Deck& deck : decks)
    for (const Side& side : deck.sides)
      for (const int piece : Fence(scene, deck, side, mm(Of::barrier_school)).pieces()) {
        if (has(told, piece)) continue;
        told.push_back(piece);
        judge(scene, piece, cautions);
      }
}

}  // namespace nook::safe
