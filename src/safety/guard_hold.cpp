// Screws of guards: what holds a guard stands fast itself, and a rail held at one end turns about
// it.
#include <algorithm>
#include <cmath>

#include "safety/checks.h"
#include "safety/fence.h"
#include "safety/look.h"
#include "safety/on_wall.h"

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

// What each piece is screwed to.
struct Screwed {
  std::vector<std::vector<int>> to;     // pieces, by piece
  std::vector<std::vector<int>> walls;  // of the survey, by piece
};
Screwed screwed(const Scene& scene) {
  Screwed out;
  out.to.resize(scene.bodies.size());
  out.walls.resize(scene.bodies.size());
  for (const Fastening& fastening : scene.in.design.fastenings)
    for (int a : pieces_of(scene, fastening)) {
      if (const int wall = wall_into(scene, fastening); wall >= 0) out.walls[a].push_back(wall);
      for (int b : pieces_named(scene.in.pieces, scene.in.design, fastening.to)) {
        out.to[a].push_back(b);
        out.to[b].push_back(a);
      }
    }
  return out;
}

// Which pieces of guards are held: by a chain of screws to a wall or a deck that runs through no
// rail but such as are held at both ends themselves.
class Hold {
 public:
  Hold(const Scene& scene, const std::vector<Deck>& decks, const std::vector<int>& guards)
      : scene_(scene), screwed_(screwed(scene)), firm_(scene.bodies.size()) {
    for (int piece : guards)
      if (is_rail(piece)) rails_.push_back(piece);
    for (const Deck& deck : decks)
      for (int piece : deck.pieces) firm_[piece] = true;
    while (spread_once()) continue;
  }

  bool is_rail(int piece) const {
    const auto stick = stick_of(scene_.bodies[piece]);
    return stick && std::abs(stick->along.z) <= kUpright;
  }
  bool loose(int piece) const {
    return screwed_.to[piece].empty() && screwed_.walls[piece].empty();
  }
  bool firm(int piece) const { return firm_[piece]; }
  // 0, 1 or 2.
  int ends_held(int rail) const {
    const auto stick = stick_of(scene_.bodies[rail]);
    const Vec3 reach = (stick->length / 2) * stick->along;
    return held_at(rail, stick->middle + reach) + held_at(rail, stick->middle - reach);
  }
  // Some chain of screws leads to what holds, through rails that may turn too.
  bool hangs_on(int piece) const {
    std::vector<int> seen{piece};
    for (std::size_t i = 0; i < seen.size(); ++i) {
      if (firm_[seen[i]] || !screwed_.walls[seen[i]].empty()) return true;
      for (int other : screwed_.to[seen[i]])
        if (!has(seen, other)) seen.push_back(other);
    }
    return false;
  }

 private:
  // Whether any piece more became firm.
  bool spread_once() {
    bool more = false;
    for (int piece = 0; piece < static_cast<int>(firm_.size()); ++piece) {
      if (firm_[piece] || !now_firm(piece)) continue;
      firm_[piece] = more = true;
    }
    return more;
  }
  bool now_firm(int piece) const {
    if (has(rails_, piece)) return ends_held(piece) == 2;
    return !screwed_.walls[piece].empty() ||
           std::any_of(screwed_.to[piece].begin(), screwed_.to[piece].end(),
                       [&](int other) { return firm_[other]; });
  }
  bool held_at(int rail, Vec3 end) const {
    const auto& to = screwed_.to[rail];
    return std::any_of(
               to.begin(), to.end(),
               [&](int other) { return firm_[other] && near(scene_.bodies[other], end); }) ||
           wall_at(rail, end);
  }
  // A room that is not known may have its wall anywhere.
  bool wall_at(int rail, Vec3 end) const {
    const auto& walls = screwed_.walls[rail];
    return std::any_of(walls.begin(), walls.end(), [&](int wall) {
      return !scene_.room_known() || before(scene_.in.room.walls[wall], end) < kAtEnd;
    });
  }

  const Scene& scene_;
  Screwed screwed_;
  std::vector<int> rails_;
  std::vector<char> firm_;
};

// What is wrong with how a piece is held; empty where nothing is.
std::string fault_of(const Hold& hold, int piece) {
  if (hold.loose(piece))
    return "It guards a deck, and nothing in the design screws it to anything: it gives way under "
           "who leans on it. Screw both its ends.";
  const int ends = hold.is_rail(piece) ? hold.ends_held(piece) : 2;
  if (!hold.hangs_on(piece) || ends == 0)
    return "It guards a deck, and what the design screws it to is itself held by no wall, deck or "
           "post: it gives way under who leans on it. Screw both its ends to what stands fast.";
  return ends == 1 ? "It guards a deck, and the design screws it at one end alone to what stands "
                     "fast: it turns about that under who leans on it. Screw the other end too."
                   : "";
}

void judge(const Scene& scene, const Hold& hold, int piece, Cautions& cautions) {
  const std::string what = fault_of(hold, piece);
  if (what.empty()) return;
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
  std::vector<int> climbed, guards;
  for (const Ladder& ladder : ladders) {
    climbed.insert(climbed.end(), ladder.rungs.begin(), ladder.rungs.end());
    climbed.insert(climbed.end(), ladder.rails.begin(), ladder.rails.end());
  }
  for (const Deck& deck : decks)
    for (const Side& side : deck.sides)
      for (const int piece : Fence(scene, deck, side, mm(Of::barrier_school)).pieces())
        if (!has(climbed, piece) && !has(guards, piece)) guards.push_back(piece);
  const Hold hold(scene, decks, guards);
  for (int piece : guards) judge(scene, hold, piece, cautions);
}

}  // namespace nook::safe
