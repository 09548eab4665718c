// A sphere of 3.5 in that passes where one of 9 in does not.
#include <algorithm>

#include "safety/left_opening.h"
#include "safety/traps.h"
#include "solid/polygon.h"

namespace nook::safe {
namespace {

constexpr double kDoubt = 6;  // mm beyond the limits that a wide plus-or-minus may reach; chosen
constexpr double kSamePlace = 100;  // mm: the same opening seen in two planes; chosen

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

// "aft porthole of front panel", where the circle lies in a cutout of a piece in the plane.
std::string cutout_at(const Scene& scene, const Trap& trap) {
  for (const Touch& touch : trap.opening.rim) {
    if (touch.owner.kind != Owner::Kind::piece) continue;
    const Body& body = scene.bodies[touch.owner.index];
    const Vec3 q = body.frame.piece_from_room(trap.at);
    for (const Cutout& cutout : scene.part(touch.owner.index).cutouts)
      if (contains({cutout.outline, {}}, {q.x, q.y}))
        return (cutout.name.empty() ? "cutout" : cutout.name) + " of " + body.piece->name;
  }
  return {};
}

std::string where(const Scene& scene, const Trap& trap) {
  const std::string cutout = cutout_at(scene, trap);
  std::vector<std::string> names;
  for (const Touch& touch : trap.opening.rim) {
    const std::string name = name_of(scene, touch.owner);
    const bool told = cutout.ends_with(" of " + name) && !cutout.empty();
    if (!name.empty() && !told && std::find(names.begin(), names.end(), name) == names.end())
      names.push_back(name);
  }
  std::sort(names.begin(), names.end());
  if (cutout.empty()) return names.size() < 2 ? joined(names) : "between " + joined(names);
  return names.empty() ? cutout : cutout + ", as crossed by " + joined(names);
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
      const auto same = [&](const Trap& t) { return norm(t.at - trap.at) < kSamePlace; };
      if (std::none_of(all.begin(), all.end(), same)) all.push_back(std::move(trap));
    }
  for (const Trap& trap : all) judge(scene, trap, cautions);
}

}  // namespace nook::safe
