// Gaps of a finger's or a limb's width between two things that stand side by side.
#include <algorithm>
#include <map>
#include <utility>

#include "safety/slot.h"
#include "safety/traps.h"

namespace nook::safe {
namespace {

constexpr double kSideBySide = 20;  // degrees between the sides of a gap, at most; chosen
constexpr double kVaries = 2;       // mm of width that are worth telling; chosen
constexpr double kAsSure = 0.05;    // mm: gaps this close catch alike; chosen
constexpr double kDoubt = 5;        // mm over the widest gap that is looked at; chosen

/// A width that catches something, and what it says.
struct Catch {
  std::string_view id;
  Of small, large;
  std::string what;
};
const Catch kCatches[] = {{"finger-gap", Of::finger_small, Of::finger_large, "a finger"},
                          {"limb-gap", Of::limb_small, Of::limb_large, "an arm or a leg"}};

bool is_piece(Owner owner) {
  return owner.kind == Owner::Kind::piece;
}
bool is_thing(Owner owner) {
  return is_piece(owner) || owner.kind == Owner::Kind::wall;
}

// Two walls meet in the room's own corner: nobody made that gap.
bool may_catch(Owner a, Owner b) {
  return is_thing(a) && is_thing(b) && (is_piece(a) || is_piece(b));
}

// Closed in the room by what the contact between the two says. Requires: one is a piece.
bool closed(const Scene& scene, Owner a, Owner b) {
  if (!is_piece(a)) std::swap(a, b);
  const auto names = [&](const std::string& name, int k) { return is_named(scene.piece(k), name); };
  return std::any_of(scene.in.design.contacts.begin(), scene.in.design.contacts.end(),
                     [&](const Contact& contact) {
                       if (contact.by == Fitting::butt || contact.by == Fitting::clear)
                         return false;
                       if (!is_piece(b))
                         return names(contact.part, a.index) && contact.meets == name_of(scene, b);
                       return (names(contact.part, a.index) && names(contact.meets, b.index)) ||
                              (names(contact.part, b.index) && names(contact.meets, a.index));
                     });
}

struct Gap {
  Slot slot;
  Sight sight;
  double least = 0, most = 0;  // over all slots between the same two
};

using Pair = std::pair<Owner, Owner>;
Pair pair_of(const Slot& slot) {
  const Owner a = slot.sides[0].owner, b = slot.sides[1].owner;
  return a < b ? Pair{a, b} : Pair{b, a};
}

double off(const Slot& slot, const Catch& by) {
  return std::abs(slot.across - (mm(by.small) + mm(by.large)) / 2);
}

struct Seen {
  Slot slot;
  Sight sight;
};

// How far a piece reaches from the face of a wall, or above the floor where there is no wall.
double reach_from(const Scene& scene, const Body& body, const WallShape* wall) {
  double most = 0;
  for (Vec2 q : body.region.outline)
    for (double w : {0.0, body.piece->thickness}) {
      const Vec3 p = body.frame.room_from_piece({q.x, q.y, w});
      most = std::max(most, wall ? before(*wall, p) : p.z - scene.in.room.floor.z({p.x, p.y}));
    }
  return most;
}

// How deep a gap is over a surface behind it: as far as the nearer of its sides reaches from that.
double depth_over(const Scene& scene, const Slot& slot, const WallShape* wall) {
  double least = 1e9;
  for (const Touch& side : slot.sides)
    if (side.owner.kind == Owner::Kind::piece)
      least = std::min(least, reach_from(scene, scene.bodies[side.owner.index], wall));
  return least;
}

// A groove less deep than wide, with a wall or the floor behind it, takes in no finger or limb as
// thick as it is wide, so it holds none. Chosen.
bool shallow(const Scene& scene, const Slot& slot) {
  if (!scene.room_known()) return false;
  const auto& walls = scene.in.room.walls;
  for (int k = 0; k < static_cast<int>(walls.size()); ++k) {
    const Owner owner{Owner::Kind::wall, k};
    if (slot.sides[0].owner == owner || slot.sides[1].owner == owner) continue;
    if (depth_over(scene, slot, &walls[k]) < slot.across) return true;
  }
  return depth_over(scene, slot, nullptr) < slot.across;
}

std::vector<Seen> slots_of(const Scene& scene, const std::vector<Look>& looks) {
  std::vector<Seen> seen;
  for (const Look& look : looks) {
    const View view = view_of(scene, look.plane.sight, {-look.plane.half, look.plane.half}, 0);
    for (const Slot& slot :
         slots(view.air, view.window, mm(Of::limb_large) + kDoubt, kSideBySide)) {
      const auto& [a, b] = slot.sides;
      if (may_catch(a.owner, b.owner) && !closed(scene, a.owner, b.owner) && !shallow(scene, slot))
        seen.push_back({slot, look.plane.sight});
    }
  }
  return seen;
}

// Of the places between two things that catch as surely, the lowest.
Seen tellingest(const std::vector<Seen>& all, const Catch& by) {
  double least = off(all.front().slot, by);
  for (const Seen& seen : all) least = std::min(least, off(seen.slot, by));
  const Seen* best = nullptr;
  double lowest = 1e9;
  for (const Seen& seen : all) {
    const double up = seen.sight.room(seen.slot.middle).z;
    if (off(seen.slot, by) < least + kAsSure && up < lowest) best = &seen, lowest = up;
  }
  return *best;
}

// Of each two things the gap that catches most surely.
std::map<Pair, Gap> gaps_of(const std::vector<Seen>& seen, const Catch& by) {
  std::map<Pair, std::vector<Seen>> between;
  for (const Seen& one : seen) between[pair_of(one.slot)].push_back(one);
  std::map<Pair, Gap> gaps;
  for (const auto& [pair, all] : between) {
    const Seen told = tellingest(all, by);
    Gap gap{told.slot, told.sight, told.slot.across, told.slot.across};
    for (const Seen& one : all)
      gap.least = std::min(gap.least, one.slot.across),
      gap.most = std::max(gap.most, one.slot.across);
    gaps.insert({pair, gap});
  }
  return gaps;
}

Measured width_of(const Scene& scene, const Gap& gap) {
  return {gap.slot.across, rim_sd(scene, gap.sight, {gap.slot.sides[0], gap.slot.sides[1]})};
}

void judge(const Scene& scene, const Gap& gap, const Catch& by, Cautions& cautions) {
  const Measured width = width_of(scene, gap);
  const double caught =
      chance_at_least(width, mm(by.small)) + chance_at_most(width, mm(by.large)) - 1;
  const std::string where = between(scene, {gap.slot.sides[0].owner, gap.slot.sides[1].owner});
  const Measured up = height_of(scene, gap.slot.sides[0].owner, gap.sight.room(gap.slot.middle));
  Words text{"A gap of {}, {} above the floor: {} to {} holds {}. Close it, or change it.",
             {width, up, by.small, by.large, by.what}};
  if (gap.most - gap.least > kVaries)
    text = {
        "A gap of {}, {} above the floor, along its length from {} to {}: {} to {} holds {}. "
        "Close it, or change it.",
        {width, up, Measured{gap.least}, Measured{gap.most}, by.small, by.large, by.what}};
  cautions.judge(1 - caught, {by.id, where, text, {by.small}, "", width});
}

}  // namespace

void finger_gaps(const Scene& scene, const std::vector<Look>& looks, Cautions& cautions) {
  const std::vector<Seen> seen = slots_of(scene, looks);
  for (const Catch& by : kCatches)
    for (const auto& [pair, gap] : gaps_of(seen, by)) judge(scene, gap, by, cautions);
}

}  // namespace nook::safe
