// Holds of a box at a doorway and at a turn, each with its spare room and how surely it passes.
#include "shop/way_through.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

#include "shop/chance.h"
#include "shop/passage.h"
#include "shop/taped.h"

namespace nook {
namespace {

constexpr double kStick = 150;  // mm; what is narrower is carried level like a board. Chosen
constexpr double kForHands =
    25.4;  // mm kept under the ceiling of a hall where there is room. Chosen

using Sizes = std::array<double, 3>;  // a doorway: across, up, nothing; a turn: from, to, height

// What was measured, and how surely.
struct Taken {
  Sizes size, sd;
};
struct Tried {
  Grip hold;
  Measured spare;
  double chance = 0;
  double raised = 0;
};

// `spare` at what was measured, its sd from a step of one sd each way in each size.
Measured known(const std::function<double(const Sizes&)>& spare, const Taken& taken) {
  double variance = 0;
  for (int k = 0; k < 3; ++k) {
    Sizes more = taken.size, less = taken.size;
    more[k] += taken.sd[k], less[k] -= taken.sd[k];
    const double slope = 0.5 * (spare(more) - spare(less));
    variance += slope * slope;
  }
  return {spare(taken.size), std::sqrt(variance)};
}

Tried tried(Grip hold, const Taken& taken, const std::function<double(const Sizes&)>& spare) {
  const Measured room = known(spare, taken);
  return {hold, room, chance_above_zero(room), 0};
}

void easiest_first(std::vector<Tried>& holds, const Box& box) {
  if (box.width < kStick) std::swap(holds[0], holds[1]);
}

std::vector<Tried> holds_at(const Taken& door, const Box& box) {
  const double w = box.width, t = box.thickness;
  std::vector<Tried> holds{
      tried(Grip::on_edge, door, [=](const Sizes& s) { return std::min(s[1] - w, s[0] - t); }),
      tried(Grip::flat, door, [=](const Sizes& s) { return std::min(s[0] - w, s[1] - t); }),
      tried(Grip::tilted, door, [=](const Sizes& s) {
        const double across = std::min(s[0], s[1]) - t;
        return across < 0 ? across : std::min(across, widest_through({s[0], s[1]}, t) - w);
      })};
  easiest_first(holds, box);
  return holds;
}

// A box on the way round a turn: `deep` of it upright while it is level, `wide` of it in plan.
struct Lying {
  double length, deep, wide;
};

double level_spare(const Sizes& s, const Lying& box) {
  const double under = s[2] - box.deep;
  return under < 0 ? under : std::min(under, turn_spare({s[0], s[1], s[2]}, box.length, box.wide));
}

double standing_spare(const Sizes& s, const Box& box) {
  const double under = s[2] - box.length;
  return under < 0 ? under
                   : std::min(under, turn_spare({s[0], s[1], s[2]}, box.width, box.thickness));
}

double tipped_spare(const Sizes& s, const Lying& box) {
  if (s[2] < box.deep) return s[2] - box.deep;
  const bool upright = s[2] >= tipping_height(box.length, box.deep);
  const double plan = upright ? box.deep : tipped_length(box.length, box.deep, s[2]);
  return turn_spare({s[0], s[1], s[2]}, plan, box.wide);
}

// Raised as high as the hall allows; a hand's room lower where it passes so too.
Tried tipped(Grip hold, const Taken& turn, const Lying& box) {
  const auto spare = [&](const Sizes& s) { return tipped_spare(s, box); };
  Tried best = tried(hold, turn, spare);
  best.raised = turn.size[2];
  Taken lower = turn;
  lower.size[2] -= kForHands;
  const Measured below = known(spare, lower);
  if (lower.size[2] > box.deep && below.value >= 0) best.raised = lower.size[2], best.spare = below;
  return best;
}

std::vector<Tried> holds_round(const Taken& turn, const Box& box) {
  const Lying edge{box.length, box.width, box.thickness},
      flat{box.length, box.thickness, box.width};
  std::vector<Tried> holds{
      tried(Grip::on_edge, turn, [&](const Sizes& s) { return level_spare(s, edge); }),
      tried(Grip::flat, turn, [&](const Sizes& s) { return level_spare(s, flat); }),
      tried(Grip::standing, turn, [&](const Sizes& s) { return standing_spare(s, box); })};
  easiest_first(holds, box);
  if (turn.size[2] >= tipping_height(box.length, box.thickness) + kForHands) return holds;
  holds.push_back(tipped(Grip::tipped, turn, edge));
  holds.push_back(tipped(Grip::tipped_flat, turn, flat));
  if (box.width < kStick) std::swap(holds[3], holds[4]);
  return holds;
}

// The first that surely passes, else the likeliest, else the one with most room.
const Tried& taken_of(const std::vector<Tried>& holds, double sure) {
  const auto passes = [&](const Tried& hold) { return hold.chance >= sure; };
  const auto first = std::find_if(holds.begin(), holds.end(), passes);
  if (first != holds.end()) return *first;
  return *std::max_element(holds.begin(), holds.end(), [](const Tried& a, const Tried& b) {
    return a.chance != b.chance ? a.chance < b.chance : a.spare.value < b.spare.value;
  });
}

template <typename HoldsOf>
Pass best_pass(const std::vector<Box>& boxes, double sure, const HoldsOf& holds_of) {
  std::vector<Tried> best_of_each;
  for (const Box& box : boxes) best_of_each.push_back(taken_of(holds_of(box), sure));
  const Tried& best = taken_of(best_of_each, sure);
  Pass pass;
  pass.spare = best.spare;
  pass.chance = best.chance;
  pass.verdict = verdict_of(best.chance, sure);
  pass.hold = best.hold;
  pass.raised_mm = best.raised;
  return pass;
}

Pass through_clear(const std::vector<Box>& boxes, const Taken& door, double sure) {
  return best_pass(boxes, sure, [&](const Box& box) { return holds_at(door, box); });
}

}  // namespace

Pass through_doorway(const std::vector<Box>& boxes, const Doorway& door, const WayIn& way) {
  const Taken off{
      {door.width.mm, door.height.mm, 0},
      {sd_between_faces(way.survey, door.width), sd_between_faces(way.survey, door.height), 0}};
  Taken on = off;
  if (door.leaf) on.size[0] -= door.leaf->mm;
  Pass pass = through_clear(boxes, on, way.sure);
  pass.kind = Pass::Kind::doorway;
  pass.name = door.name;
  if (door.leaf) pass.leaf_off = through_clear(boxes, off, way.sure).spare;
  return pass;
}

Pass round_turn(const std::vector<Box>& boxes, const HallTurn& turn, const WayIn& way) {
  const Taken taken{{turn.from.mm, turn.to.mm, turn.height.mm},
                    {sd_between_faces(way.survey, turn.from), sd_between_faces(way.survey, turn.to),
                     sd_between_faces(way.survey, turn.height)}};
  Pass pass = best_pass(boxes, way.sure, [&](const Box& box) { return holds_round(taken, box); });
  pass.kind = Pass::Kind::turn;
  pass.name = turn.name;
  return pass;
}

}  // namespace nook
