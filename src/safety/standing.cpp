// What falls on somebody, and what somebody lifts.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "safety/checks.h"
#include "safety/lifting.h"
#include "safety/look.h"
#include "safety/source.h"

namespace nook::safe {
namespace {

constexpr double kLevel = 0.9;   // of the normal's way up; chosen
constexpr double kOnFloor = 50;  // mm: what starts lower stands on the floor; chosen

struct Thing {
  std::vector<std::string> names;
  double low = 1e9, high = -1e9;  // room z
  double weight = 0;              // N
  bool weighed = true;
  Vec3 foot;  // its lowest spot
};

Thing thing_of(const Scene& scene, const Holding& holding, int number) {
  Thing thing;
  for (int k = 0; k < static_cast<int>(scene.bodies.size()); ++k) {
    if (holding.thing_of(k) != number) continue;
    thing.names.push_back(scene.piece(k).name);
    const auto weight = weight_of(scene.stock(k), scene.piece(k));
    thing.weight += weight.value_or(0);
    thing.weighed = thing.weighed && weight;
    const Body& body = scene.bodies[k];
    for (Vec2 p : body.region.outline)
      for (double w : {0.0, body.piece->thickness}) {
        const Vec3 q = body.frame.room_from_piece({p.x, p.y, w});
        if (q.z < thing.low) thing.low = q.z, thing.foot = q;
        thing.high = std::max(thing.high, q.z);
      }
  }
  return thing;
}

void judge_tipping(const Scene& scene, const Thing& thing, Cautions& cautions) {
  const Vec3 foot = thing.foot;
  const double floor = scene.room_known() ? scene.in.room.floor.z({foot.x, foot.y}) : 0;
  const Measured height{thing.high - thing.low};
  if (foot.z - floor > kOnFloor || height.value < mm(Of::tip_height)) return;
  if (thing.weighed && thing.weight < newtons(Of::tip_weight)) return;
  Words text{
      "Nothing screws it to a wall; {} high and {}. From {} and {} on, what a child can pull at "
      "is screwed to a stud.",
      {height, Load{thing.weight}, Of::tip_height, Of::tip_weight}};
  if (!thing.weighed) text.said[1] = std::string("of a weight that is not known");
  const bool children =
      scene.audience.children && (scene.audience.stated || scene.audience.purpose);
  cautions.say({"tip-over", joined(thing.names), text, {Of::tip_height}, "", height},
               children ? Severity::danger : Severity::caution);
}

bool has_panel_on_top(const Scene& scene, const Holding& holding, int number) {
  for (int k = 0; k < static_cast<int>(scene.bodies.size()); ++k)
    if (holding.thing_of(k) == number && std::abs(scene.bodies[k].frame.w.z) > kLevel &&
        !stick_of(scene.bodies[k]))
      return true;
  return false;
}

// A panel that lies on others and that no screw holds: hinged, or forgotten.
void judge_lid(const Scene& scene, const Thing& thing, Cautions& cautions) {
  if (!scene.audience.children || scene.in.design.fastenings.empty()) return;
  const double floor = scene.room_known() ? scene.in.room.floor.z({thing.foot.x, thing.foot.y}) : 0;
  if (thing.low - floor <= kOnFloor) return;
  cautions.say(
      {"loose-lid",
       joined(thing.names),
       {"Nothing in the design screws it to what it lies on. Screw it down; or, if it is a lid, "
        "fit a support that holds it open wherever it is let go, no latch, and gaps for air: a "
        "lid falls on heads and fingers, and shuts a child in.",
        {}},
       {},
       cited(From::toy_chests),
       {}});
}

// The heaviest piece, and those that cannot be weighed.
void tell_weights(const Scene& scene, Cautions& cautions) {
  double most = 0;
  int heaviest = -1;
  std::vector<std::string> unknown;
  for (int k = 0; k < static_cast<int>(scene.bodies.size()); ++k) {
    const auto weight = weight_of(scene.stock(k), scene.piece(k));
    if (weight && *weight > most) most = *weight, heaviest = k;
    if (!weight) unknown.push_back(scene.piece(k).name);
  }
  if (heaviest >= 0) {
    const Piece& piece = scene.piece(heaviest);
    const int people = hands_for(most, piece);
    const std::string hands = people == 1 ? "one person" : fmt::format("{} people", people);
    const std::string why = is_long(piece) ? ", as it is long" : "";
    cautions.say({"lifting",
                  piece.name,
                  {"The heaviest piece, {}: {} to lift it{}; at most {} a person.",
                   {Load{most}, hands, why, Of::one_person}},
                  {Of::one_person},
                  "",
                  {}},
                 people > 2 ? Severity::caution : Severity::note);
  }
  if (!unknown.empty())
    cautions.say({"weight-not-known",
                  joined(unknown),
                  {"The stock states neither `density` nor `gravity`: weigh before lifting.", {}},
                  {},
                  std::string(words(Known::no_source)),
                  {}});
}

}  // namespace

void standing(const Scene& scene, const Holding& holding, Cautions& cautions) {
  for (int number = 0; number < holding.things(); ++number) {
    const Thing thing = thing_of(scene, holding, number);
    for (int k = 0; k < static_cast<int>(scene.bodies.size()); ++k) {
      if (holding.thing_of(k) != number) continue;
      if (!holding.to_wall(k)) {
        judge_tipping(scene, thing, cautions);
        if (has_panel_on_top(scene, holding, number)) judge_lid(scene, thing, cautions);
      }
      break;
    }
  }
  tell_weights(scene, cautions);
}

}  // namespace nook::safe
