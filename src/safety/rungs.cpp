// Rungs as the foot and the hand meet them.
#include <algorithm>
#include <cmath>
#include <utility>

#include "safety/fence.h"
#include "safety/ladder_cautions.h"

namespace nook::safe {
namespace {

std::string name_of(const Scene& scene, const Ladder& ladder) {
  const std::string first = scene.piece(ladder.rungs.front()).name;
  return first + " to " + scene.piece(ladder.rungs.back()).name;
}

void judge_grip(const Scene& scene, const Ladder& ladder, Cautions& cautions) {
  if (ladder.treads())
    return cautions.say(
        {"tread-not-grip",
         name_of(scene, ladder),
         {"These are treads, {} deep: a hand finds no grip on a flat of {} or more. Give "
          "it something else to hold all the way up.",
          {Measured{ladder.deep}, Of::tread_flat}},
         {Of::tread_flat},
         "",
         Measured{ladder.deep}});
  const Measured thin{std::min(ladder.deep, ladder.thick)},
      thick{std::max(ladder.deep, ladder.thick)};
  const double well =
      std::min(chance_at_least(thin, mm(Of::rung_thin)), chance_at_most(thick, mm(Of::rung_thick)));
  cautions.judge(well, {"rung-grip",
                        name_of(scene, ladder),
                        {"Rungs of {} by {} are held badly: {} to {} across the grip.",
                         {thin, thick, Of::rung_thin, Of::rung_thick}},
                        {Of::rung_thin},
                        "",
                        thick});
}

/// From one top to the next, and to the deck.
struct Rises {
  std::vector<Measured> between;
  std::optional<Measured> last;

  std::vector<Measured> all() const {
    std::vector<Measured> rises = between;
    if (last) rises.push_back(*last);
    return rises;
  }
};

Rises rises_of(const Scene& scene, const std::vector<Deck>& decks, const Ladder& ladder) {
  Rises rises;
  for (std::size_t i = 0; i + 1 < ladder.rungs.size(); ++i)
    rises.between.push_back(
        {top_of(scene.bodies[ladder.rungs[i + 1]]) - top_of(scene.bodies[ladder.rungs[i]])});
  if (!ladder.deck) return rises;
  const Deck& deck = decks[*ladder.deck];
  const int top = ladder.rungs.back();
  const Vec3 at = stick_of(scene.bodies[top])->middle;
  rises.last =
      Measured{deck.top - top_of(scene.bodies[top]),
               spread(scene, {{Owner::Kind::piece, top}, at},
                      {{Owner::Kind::piece, deck.lead()}, {at.x, at.y, deck.top}}, {0, 0, 1})};
  return rises;
}

bool less(Measured a, Measured b) {
  return a.value < b.value;
}

void judge_apart(const Scene& scene, const Ladder& ladder, const Rises& rises, Cautions& cautions) {
  const auto all = rises.all();
  const Measured most = *std::max_element(all.begin(), all.end(), less);
  const Measured least = *std::min_element(all.begin(), all.end(), less);
  const std::string where = name_of(scene, ladder);
  if (!scene.audience.children) {
    const double well = std::min(chance_at_least(least, mm(Of::work_rung_low)),
                                 chance_at_most(most, mm(Of::work_rung_high)));
    return cautions.judge(well, {"work-rungs",
                                 where,
                                 {"Rungs {} to {} apart; {} to {} is usual for adults.",
                                  {least, most, Of::work_rung_low, Of::work_rung_high}},
                                 {Of::work_rung_low},
                                 "",
                                 most});
  }
  cautions.judge(chance_at_most(most, mm(Of::rung_apart)),
                 {"rungs-far-apart",
                  where,
                  {"Rungs rise by up to {}; at most {} for children.", {most, Of::rung_apart}},
                  {Of::rung_apart},
                  "",
                  most});
  if (scene.audience.sleeps())
    cautions.judge(chance_at_least(least, mm(Of::bed_tread)),
                   {"bed-treads",
                    where,
                    {"Treads {} apart; at least {} on the way to a bed.", {least, Of::bed_tread}},
                    {Of::bed_tread},
                    "",
                    least});
}

// "11, 11 and 11 to the deck 11 3/8" and what to do about the feet.
Words uneven_text(const Rises& rises, Measured differ) {
  Words text{"Rungs rise by ", {}};
  for (std::size_t i = 0; i < rises.between.size(); ++i) {
    text.pattern += i == 0 ? "{}" : ", {}";
    text.said.emplace_back(rises.between[i]);
  }
  if (rises.last) {
    text.pattern += "; the deck is {} above the last";
    text.said.emplace_back(*rises.last);
  }
  text.pattern += ": they differ by {}; at most {}.";
  text.said.emplace_back(differ);
  text.said.emplace_back(Of::rung_even);
  if (!rises.last) return text;
  double mean = 0;
  for (Measured rise : rises.between)
    mean += rise.value / static_cast<double>(rises.between.size());
  const double over = rises.last->value - mean;
  text.pattern += over > 0 ? " Lengthen the rails by {} below the first rung."
                           : " Shorten the rails by {} below the first rung.";
  text.said.emplace_back(Measured{std::abs(over)});
  return text;
}

void judge_even(const Scene& scene, const Ladder& ladder, const Rises& rises, Cautions& cautions) {
  const auto all = rises.all();
  const auto [least, most] = std::minmax_element(all.begin(), all.end(), less);
  const Measured differ{most->value - least->value, std::max(most->sd, least->sd)};
  cautions.judge(chance_at_most(differ, mm(Of::rung_even)), {"rungs-uneven",
                                                             name_of(scene, ladder),
                                                             uneven_text(rises, differ),
                                                             {Of::rung_even},
                                                             "",
                                                             differ});
}

// How far it is from the middle of a rung to the first thing behind it, up to `most`.
double room_behind(const Scene& scene, const Ladder& ladder, int rung, double most) {
  constexpr double kLook = 2;   // mm between looks; chosen
  constexpr double kToes = 20;  // mm above the rung; chosen
  const Vec3 middle = stick_of(scene.bodies[rung])->middle;
  for (double d = ladder.deep / 2; d < most; d += kLook)
    for (double side : {-0.25, 0.0, 0.25}) {
      Vec3 p = middle + d * ladder.towards + side * ladder.length * ladder.along;
      p.z = top_of(scene.bodies[rung]) + kToes;
      const bool hit = std::any_of(scene.bodies.begin(), scene.bodies.end(),
                                   [&](const Body& body) { return in_body(body, p); });
      if (hit || in_wall(scene, p)) return d;
    }
  return most;
}

void judge_toes(const Scene& scene, const Ladder& ladder, Cautions& cautions) {
  const double enough = mm(Of::toe_room);
  double least = 2 * enough;
  for (int rung : ladder.rungs)
    least = std::min(least, room_behind(scene, ladder, rung, 2 * enough));
  cautions.judge(chance_at_least({least}, enough),
                 {"toe-room",
                  name_of(scene, ladder),
                  {"Behind the middle of a rung there is {} of room for toes; {} is usual.",
                   {Measured{least}, Of::toe_room}},
                  {Of::toe_room},
                  "",
                  Measured{least}});
}

// Something upright at both sides of the way up, or at one.
void judge_handhold(const Scene& scene, const Deck& deck, const Ladder& ladder,
                    Cautions& cautions) {
  constexpr double kReach = 150;  // mm beside the way up; chosen
  for (const Side& side : deck.sides) {
    const auto way = way_up(scene, ladder, side);
    if (!way) continue;
    const Fence fence(scene, deck, side, mm(Of::handhold));
    const auto open = fence.open_at(mm(Of::handhold));
    const bool bare = std::any_of(open.begin(), open.end(), [&](Stretch s) {
      return s.from <= std::max(way->from - kReach, side.from) &&
             s.to >= std::min(way->to + kReach, side.to);
    });
    if (bare)
      cautions.say(
          {"handhold-missing",
           nook::safe::name_of(scene, deck),
           {"Where the ladder comes up nothing to hold rises {} above the deck.", {Of::handhold}},
           {},
           std::string(words(Known::no_source)),
           {}});
  }
}

}  // namespace

void rungs(const Scene& scene, const std::vector<Deck>& decks, const Ladder& ladder,
           Cautions& cautions) {
  judge_grip(scene, ladder, cautions);
  const Rises rises = rises_of(scene, decks, ladder);
  judge_apart(scene, ladder, rises, cautions);
  judge_even(scene, ladder, rises, cautions);
  judge_toes(scene, ladder, cautions);
  if (ladder.deck) judge_handhold(scene, decks[*ladder.deck], ladder, cautions);
}

}  // namespace nook::safe
