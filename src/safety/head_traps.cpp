// A sphere of 3.5 in that passes where one of 9 in does not.
#include <algorithm>

#include "safety/left_opening.h"
#include "safety/traps.h"
#include "solid/polygon.h"

namespace nook::safe {
namespace {

constexpr double kDoubt = 6;  // mm beyond the limits that a wide plus-or-minus may reach; chosen

struct Trap {
  LeftOpening opening;
  const Plane* plane;
  Vec3 at;
};

std::vector<Trap> traps_in(const Scene& scene, const Look& look) {
  const Grid grid(look.view.air, look.view.window);
  std::vector<Trap> traps;
  for (const LeftOpening& opening :
       openings(look.view.air, grid, mm(Of::head_small) - kDoubt, mm(Of::head_large) + kDoubt))
    if (!opening.ground && !blind(scene, look.plane, opening.at))
      traps.push_back({opening, &look.plane, look.plane.sight.room(opening.at)});
  return traps;
}

/// A cutout that the circle lies in.
struct Pierced {
  const Cutout* cutout = nullptr;
  int piece = -1;
};

Pierced pierced_at(const Scene& scene, const Trap& trap) {
  for (const Touch& touch : trap.opening.rim) {
    if (touch.owner.kind != Owner::Kind::piece) continue;
    const Vec3 q = scene.bodies[touch.owner.index].frame.piece_from_room(trap.at);
    for (const Cutout& cutout : scene.part(touch.owner.index).cutouts)
      if (contains({cutout.outline, {}}, {q.x, q.y})) return {&cutout, touch.owner.index};
  }
  return {};
}

// "aft porthole of front panel, as crossed by deck", or what stands round it.
std::string where(const Scene& scene, const Trap& trap) {
  const Pierced pierced = pierced_at(scene, trap);
  std::vector<Owner> others;
  for (const Touch& touch : trap.opening.rim)
    if (touch.owner != Owner{Owner::Kind::piece, pierced.piece}) others.push_back(touch.owner);
  if (!pierced.cutout) return between(scene, others);
  const std::string& name = pierced.cutout->name;
  const std::string hole =
      (name.empty() ? "cutout" : name) + " of " + scene.piece(pierced.piece).name;
  if (others.empty()) return hole;
  std::vector<std::string> names;
  std::sort(others.begin(), others.end());
  for (Owner owner : others) names.push_back(name_of(scene, owner));
  return hole + ", as crossed by " + joined(names);
}

Severity severity(const Audience& audience) {
  const bool meant = audience.stated || audience.purpose;
  return meant && audience.climbed() ? Severity::danger : Severity::caution;
}

void judge(const Scene& scene, const Trap& trap, Cautions& cautions) {
  const Measured across{trap.opening.across, rim_sd(scene, trap.plane->sight, trap.opening.rim)};
  const double caught =
      1 - chance_at_most(across, mm(Of::head_small)) - chance_at_least(across, mm(Of::head_large));
  Words text{
      "An opening of {}, {} above the floor: over {} a body goes through, under {} a head does "
      "not follow. Close it, or make it smaller or larger than that.",
      {across, height_of(scene, trap.opening.rim.front().owner, trap.at), Of::head_small,
       Of::head_large}};
  cautions.judge(1 - std::max(caught, 0.0),
                 {"head-trap", where(scene, trap), text, {Of::head_small}, "", across},
                 severity(scene.audience));
}

}  // namespace

void head_traps(const Scene& scene, const std::vector<Look>& looks, Cautions& cautions) {
  std::vector<Trap> all;
  for (const Look& look : looks)
    for (Trap& trap : traps_in(scene, look)) {
      // Circles that overlap are in one opening, seen in two planes.
      const auto same = [&](const Trap& t) { return norm(t.at - trap.at) < t.opening.across; };
      if (std::none_of(all.begin(), all.end(), same)) all.push_back(std::move(trap));
    }
  for (const Trap& trap : all) judge(scene, trap, cautions);
}

}  // namespace nook::safe
