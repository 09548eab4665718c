// V shapes with less than 55 degrees between their sides, and slots, that a neck slips into.
#include <fmt/format.h>

#include <algorithm>

#include "safety/slot.h"
#include "safety/traps.h"

namespace nook::safe {
namespace {

constexpr double kSamePlace = 300;   // mm: circles of one V or slot lie closer; chosen
constexpr double kSameWidth = 10;    // mm: of one slot all along; chosen
constexpr double kOtherWidth = 0.1;  // share: circles of a V differ by more; chosen
constexpr double kParallel = 5;      // degrees: less is a slot, not a V; chosen
constexpr double kSideways = -0.2;   // a V that opens further down lets a neck fall out; chosen

struct Neck {
  Slot slot;
  const Look* look;
  Vec3 at;
};

bool of_pieces_or_walls(const Slot& slot) {
  return std::all_of(std::begin(slot.sides), std::end(slot.sides), [](const Touch& touch) {
    return touch.owner.kind == Owner::Kind::piece || touch.owner.kind == Owner::Kind::wall;
  });
}

bool catches(const Scene& scene, const Look& look, const Slot& slot) {
  const double head = mm(Of::head_large);
  if (!of_pieces_or_walls(slot) || slot.opens.y < kSideways) return false;
  if (blind(scene, look.plane, slot.middle)) return false;
  if (followed(look.view.air, slot, head) != SlotEnd::wide) return false;
  return slot.angle_deg > kParallel || followed(look.view.air, slot, head, true) != SlotEnd::floor;
}

// The slot in which a neck sits most surely between too narrow and too wide.
double doubt(const Slot& slot) {
  const double middle = (mm(Of::neck_width) + mm(Of::head_large)) / 2;
  return std::abs(slot.across - middle);
}

bool between_the_same(const Slot& a, const Slot& b) {
  return std::is_permutation(std::begin(a.sides), std::end(a.sides), std::begin(b.sides),
                             std::end(b.sides),
                             [](const Touch& p, const Touch& q) { return p.owner == q.owner; });
}

// A V holds narrower or wider circles too; one that rolls over the corner of a rail is in none.
bool is_followed(const Slot& v, const std::vector<Slot>& all) {
  return std::any_of(all.begin(), all.end(), [&](const Slot& other) {
    return other.angle_deg > kParallel && between_the_same(v, other) &&
           std::abs(other.across - v.across) > kOtherWidth * v.across;
  });
}

bool same_place(const Neck& a, const Neck& b) {
  const auto parallel = [](const Neck& n) { return n.slot.angle_deg <= kParallel; };
  const bool one_slot = between_the_same(a.slot, b.slot) && parallel(a) && parallel(b) &&
                        a.look == b.look && std::abs(a.slot.across - b.slot.across) < kSameWidth;
  return one_slot || norm(a.at - b.at) < kSamePlace;
}

// A slot is told by its lowest place, a V by where a neck fits best.
bool better(const Neck& neck, const Neck& known) {
  if (std::max(neck.slot.angle_deg, known.slot.angle_deg) <= kParallel)
    return neck.at.z < known.at.z - 1e-6;
  return doubt(neck.slot) < doubt(known.slot) - 1e-6;
}

void keep(std::vector<Neck>& necks, Neck neck) {
  for (Neck& known : necks) {
    if (!same_place(known, neck)) continue;
    const double angle = std::min(known.slot.angle_deg, neck.slot.angle_deg);
    if (better(neck, known)) known = neck;
    known.slot.angle_deg = angle;
    return;
  }
  necks.push_back(neck);
}

Measured across(const Scene& scene, const Neck& neck) {
  const auto& sides = neck.slot.sides;
  return {neck.slot.across, rim_sd(scene, neck.look->plane.sight, {sides[0], sides[1]})};
}

void judge(const Scene& scene, const Neck& neck, Cautions& cautions) {
  const Measured wide = across(scene, neck);
  const double out =
      chance_at_most(wide, mm(Of::neck_width)) + chance_at_least(wide, mm(Of::head_large));
  const Measured height = height_of(scene, neck.slot.sides[0].owner, neck.at);
  Found found{"neck-trap", between(scene, {neck.slot.sides[0].owner, neck.slot.sides[1].owner}),
              {},          {Of::neck_angle},
              "",          wide};
  if (neck.slot.angle_deg > kParallel)
    found.text = {
        "A V of {} degrees, {} above the floor: under {} a neck may be wedged in it. Fill it, "
        "or open it further.",
        {fmt::format("{:.0f}", neck.slot.angle_deg), height, Of::neck_angle}};
  else
    found.text = {
        "A slot of {} that is open above, {} above the floor: a neck slips in and the head "
        "does not. Close it, or make it narrower than {}.",
        {wide, height, Of::neck_width}};
  const bool meant = scene.audience.stated || scene.audience.purpose;
  cautions.judge(out, found,
                 meant && scene.audience.climbed() ? Severity::danger : Severity::caution);
}

}  // namespace

void neck_traps(const Scene& scene, const std::vector<Look>& looks, Cautions& cautions) {
  std::vector<Neck> necks;
  for (const Look& look : looks) {
    if (std::abs(look.plane.sight.n.z) > 0.5) continue;  // one falls through a level one
    const std::vector<Slot> all =
        slots(look.view.air, look.view.window, mm(Of::head_large), limit(Of::neck_angle).value);
    for (const Slot& slot : all)
      if (slot.across > mm(Of::neck_width) &&
          (slot.angle_deg <= kParallel || is_followed(slot, all)) && catches(scene, look, slot))
        keep(necks, {slot, &look, look.plane.sight.room(slot.middle)});
  }
  for (const Neck& neck : necks) judge(scene, neck, cautions);
}

}  // namespace nook::safe
