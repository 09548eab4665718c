// Sticks sorted into ladders.
#include "safety/ladder.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace nook::safe {
namespace {

// All chosen.
constexpr double kLongest = 762;   // mm, 30 in: longer ones are rails, ledgers, joists
constexpr double kShortest = 150;  // mm: blocks are no rungs
constexpr double kSameSize = 2;    // mm
constexpr double kAskew = 25;      // mm that the middles may stray along the rungs
constexpr double kRiseLeast = 100, kRiseMost = 610;  // mm from one to the next
constexpr double kNear = 305;     // mm in plan from the ladder to the deck it leads to
constexpr double kTouching = 6;   // mm: what is this near to a rung holds it
constexpr double kEndReach = 15;  // mm past a rung's end that a rail stands in
const double kLevel = std::sin(5 * std::numbers::pi / 180);
const double kParallel = std::cos(3 * std::numbers::pi / 180);

struct Rung {
  int piece;
  Stick stick;
  double thick, deep;  // upright, level
  Vec3 across;         // level, square to the long way
};

Vec3 unit(Vec3 a) {
  return (1 / norm(a)) * a;
}

// Whether something lies against the middle of one of its long sides.
bool held_along(const Scene& scene, const Rung& rung) {
  for (double way : {-1.0, 1.0}) {
    const Vec3 p = rung.stick.middle + way * (rung.deep / 2 + kTouching) * rung.across;
    if (in_wall(scene, p)) return true;
    for (std::size_t k = 0; k < scene.bodies.size(); ++k)
      if (static_cast<int>(k) != rung.piece && in_body(scene.bodies[k], p)) return true;
  }
  return false;
}

std::optional<Rung> rung_of(const Scene& scene, int piece) {
  const auto stick = stick_of(scene.bodies[piece]);
  if (!stick || std::abs(stick->along.z) > kLevel) return {};
  if (stick->length < kShortest || stick->length > kLongest) return {};
  const int up = std::abs(stick->across[0].z) > std::abs(stick->across[1].z) ? 0 : 1;
  Rung rung{piece, *stick, stick->size[up], stick->size[1 - up], {}};
  rung.across = unit(cross(stick->along, {0, 0, 1}));
  if (held_along(scene, rung)) return {};
  return rung;
}

bool alike(const Rung& a, const Rung& b) {
  const Vec3 between = b.stick.middle - a.stick.middle;
  return std::abs(dot(a.stick.along, b.stick.along)) > kParallel &&
         std::abs(a.thick - b.thick) < kSameSize && std::abs(a.deep - b.deep) < kSameSize &&
         std::abs(dot(between, a.stick.along)) < kAskew;
}

bool follows(const Rung& below, const Rung& above) {
  const double rise = above.stick.middle.z - below.stick.middle.z;
  return alike(below, above) && rise > kRiseLeast && rise < kRiseMost &&
         std::abs(dot(above.stick.middle - below.stick.middle, below.across)) < rise;
}

// The next one above, the nearest.
const Rung* next_above(const std::vector<Rung>& rungs, const Rung& below) {
  const Rung* next = nullptr;
  for (const Rung& rung : rungs)
    if (follows(below, rung) && (!next || rung.stick.middle.z < next->stick.middle.z)) next = &rung;
  return next;
}

std::vector<std::vector<Rung>> chains_of(const Scene& scene) {
  std::vector<Rung> rungs;
  for (int k = 0; k < static_cast<int>(scene.bodies.size()); ++k)
    if (auto rung = rung_of(scene, k)) rungs.push_back(*rung);
  std::vector<std::vector<Rung>> chains;
  for (const Rung& first : rungs) {
    const auto below = [&](const Rung& r) { return follows(r, first); };
    if (std::any_of(rungs.begin(), rungs.end(), below)) continue;
    std::vector<Rung> chain{first};
    while (const Rung* next = next_above(rungs, chain.back())) chain.push_back(*next);
    if (chain.size() > 1) chains.push_back(std::move(chain));
  }
  return chains;
}

double plan_distance(const Scene& scene, const Deck& deck, Vec3 p) {
  double least = 1e9;
  for (int k : deck.pieces) {
    const Body& body = scene.bodies[k];
    const Vec3 q = body.frame.piece_from_room({p.x, p.y, body.frame.at.z});
    if (contains(body.region, {q.x, q.y})) return 0;
    least = std::min(least, border_distance(body.region, {q.x, q.y}));
  }
  return least;
}

// The nearest deck above the highest rung, or the one that all of it lies above (then `above`).
std::optional<int> deck_at(const Scene& scene, const std::vector<Deck>& decks,
                           const std::vector<Rung>& chain, bool above) {
  std::optional<int> best;
  const Vec3 p = chain.back().stick.middle;
  for (int d = 0; d < static_cast<int>(decks.size()); ++d) {
    if (plan_distance(scene, decks[d], p) > kNear) continue;
    const bool fits = above ? chain.front().stick.middle.z > decks[d].top : p.z < decks[d].top;
    if (fits && (!best || std::abs(decks[d].top - p.z) < std::abs(decks[*best].top - p.z)))
      best = d;
  }
  return best;
}

std::vector<int> rails_of(const Scene& scene, const std::vector<Rung>& chain) {
  std::vector<int> rails;
  for (int k = 0; k < static_cast<int>(scene.bodies.size()); ++k) {
    const bool is_rung =
        std::any_of(chain.begin(), chain.end(), [&](const Rung& r) { return r.piece == k; });
    const bool holds = std::any_of(chain.begin(), chain.end(), [&](const Rung& r) {
      const Vec3 reach = (r.stick.length / 2 + kEndReach) * r.stick.along;
      return in_body(scene.bodies[k], r.stick.middle + reach) ||
             in_body(scene.bodies[k], r.stick.middle - reach);
    });
    if (!is_rung && holds) rails.push_back(k);
  }
  return rails;
}

Ladder ladder_of(const Scene& scene, const std::vector<Deck>& decks,
                 const std::vector<Rung>& chain) {
  Ladder ladder;
  for (const Rung& rung : chain) ladder.rungs.push_back(rung.piece);
  const Rung& first = chain.front();
  ladder.rails = rails_of(scene, chain);
  ladder.deck = deck_at(scene, decks, chain, false);
  ladder.along = first.stick.along, ladder.towards = first.across;
  ladder.length = first.stick.length, ladder.deep = first.deep, ladder.thick = first.thick;
  if (ladder.deck && dot(decks[*ladder.deck].middle - first.stick.middle, ladder.towards) < 0)
    ladder.towards = -ladder.towards;
  return ladder;
}

}  // namespace

bool Ladder::treads() const {
  return deep >= mm(Of::tread_flat);
}

std::vector<Ladder> ladders_of(const Scene& scene, const std::vector<Deck>& decks) {
  std::vector<Ladder> ladders;
  for (const auto& chain : chains_of(scene))
    if (!deck_at(scene, decks, chain, true)) ladders.push_back(ladder_of(scene, decks, chain));
  return ladders;
}

double top_of(const Body& body) {
  double top = -1e9;
  for (Vec2 p : body.region.outline)
    for (double w : {0.0, body.piece->thickness})
      top = std::max(top, body.frame.room_from_piece({p.x, p.y, w}).z);
  return top;
}

std::optional<Stretch> way_up(const Scene& scene, const Ladder& ladder, const Side& side) {
  if (std::abs(dot(ladder.along, side.sight.s)) < kParallel) return {};
  const Body& last = scene.bodies[ladder.rungs.back()];
  const Vec3 middle = stick_of(last)->middle;
  if (std::abs(side.sight.depth(middle)) > kNear) return {};
  const double at = side.sight.seen(middle).x;
  Stretch way{at - ladder.length / 2, at + ladder.length / 2};
  for (int k : ladder.rails)
    for (Vec2 p : scene.bodies[k].region.outline)
      for (double w : {0.0, scene.bodies[k].piece->thickness}) {
        const Vec3 q = scene.bodies[k].frame.room_from_piece({p.x, p.y, w});
        const double s = side.sight.seen(q).x;
        if (std::abs(s - at) > ladder.length / 2 + kEndReach + kStickWidth) continue;
        way = {std::min(way.from, s), std::max(way.to, s)};
      }
  return way.to < side.from || way.from > side.to ? std::nullopt : std::optional(way);
}

void mark_ways_up(const Scene& scene, const std::vector<Ladder>& ladders,
                  std::vector<Deck>& decks) {
  for (const Ladder& ladder : ladders) {
    if (!ladder.deck) continue;
    for (Side& side : decks[*ladder.deck].sides)
      if (const auto way = way_up(scene, ladder, side)) side.ways_up.push_back(*way);
  }
}

}  // namespace nook::safe
