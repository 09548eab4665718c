// Loads as stated in the design against what floors, guards and steps carry.
#include <algorithm>
#include <optional>

#include "safety/checks.h"
#include "safety/guards.h"
#include "solid/polygon.h"

namespace nook::safe {
namespace {

constexpr double kTouching = 6;       // mm between a deck and what carries it; chosen
constexpr double kBeside = 30;        // mm in plan from a deck's edge to what carries it; chosen
constexpr double kSquareMetre = 1e6;  // mm^2

// As drawn: what stands apart in the room is meant to carry it all the same.
bool carries(const Scene& scene, const Deck& deck, int piece) {
  const Frame& frame = scene.piece(piece).frame;
  const Region& own = scene.bodies[piece].region;
  for (int k : deck.pieces) {
    const Frame& over = scene.piece(k).frame;
    const Region& region = scene.bodies[k].region;
    const double underside = std::min(over.at.z, over.at.z + over.w.z * scene.piece(k).thickness);
    for (Vec2 p : own.outline)
      for (double w : {0.0, scene.piece(piece).thickness}) {
        const Vec3 at = frame.room_from_piece({p.x, p.y, w}), q = over.piece_from_room(at);
        if (std::abs(at.z - underside) > kTouching) continue;
        if (contains(region, {q.x, q.y}) || border_distance(region, {q.x, q.y}) < kBeside)
          return true;
      }
  }
  return false;
}

bool is_of(const Deck& deck, int piece) {
  return std::find(deck.pieces.begin(), deck.pieces.end(), piece) != deck.pieces.end();
}

void add(std::optional<double>& sum, std::optional<double> load) {
  if (load) sum = sum.value_or(0) + *load;
}

// What fastenings hand on from the deck and what carries it to anything else, and what feet bear.
std::optional<double> stated_for(const Scene& scene, const Deck& deck) {
  std::optional<double> sum;
  const auto counted = [&](std::vector<int> pieces) {
    std::erase_if(pieces, [&](int k) { return !is_of(deck, k) && !carries(scene, deck, k); });
    return pieces.size();
  };
  for (const Fastening& fastening : scene.in.design.fastenings) {
    const auto from = counted(pieces_of(scene, fastening));
    const auto to = counted(pieces_named(scene.in.pieces, scene.in.design, fastening.to));
    if (from > 0 && to > 0) continue;
    for (std::size_t k = 0; k < from + to; ++k) add(sum, fastening.load_n);
  }
  for (const Foot& foot : scene.in.design.feet)
    for (std::size_t k = counted(pieces_named(scene.in.pieces, scene.in.design, foot.part)); k > 0;
         --k)
      add(sum, foot.load_n);
  return sum;
}

void judge_deck(const Scene& scene, const Deck& deck, Cautions& cautions) {
  const Of each = scene.audience.sleeps() ? Of::sleep_load : Of::room_load;
  const double wanted = deck.area / kSquareMetre * newtons(each);
  const auto stated = stated_for(scene, deck);
  if (!stated)
    return cautions.say(
        {"load-not-stated",
         name_of(scene, deck),
         {"The design states no load for what carries it: {} in all, at {}.", {Load{wanted}, each}},
         {each},
         "",
         {}});
  cautions.judge(*stated >= wanted, {"deck-load",
                                     name_of(scene, deck),
                                     {"What carries it is reckoned for {} in all; at {} it is {}.",
                                      {Load{*stated}, each, Load{wanted}}},
                                     {each},
                                     "",
                                     {}});
}

// The pieces that stand lowest round the deck's open sides, ladders left out.
std::vector<int> guards_of(const Scene& scene, const Deck& deck) {
  std::vector<int> found;
  for (const Side& side : deck.sides) {
    const auto low = Fence(scene, deck, side, mm(Of::barrier_school)).lowest();
    if (!low || low->owner.kind != Owner::Kind::piece) continue;
    if (std::find(found.begin(), found.end(), low->owner.index) == found.end())
      found.push_back(low->owner.index);
  }
  return found;
}

void judge_guard(const Scene& scene, int piece, Cautions& cautions) {
  std::optional<double> pull;
  for (const Fastening& fastening : scene.in.design.fastenings) {
    const auto of = pieces_of(scene, fastening);
    if (std::find(of.begin(), of.end(), piece) != of.end()) add(pull, fastening.pull_n);
  }
  const std::string& where = scene.piece(piece).name;
  if (!pull)
    return cautions.say({"load-not-stated",
                         where,
                         {"It guards a deck, and the design states no `pull` for what holds it: a "
                          "guard takes {} at "
                          "its top. Lean on it with all your weight before a child does.",
                          {Of::guard_load}},
                         {Of::guard_load},
                         "",
                         {}});
  cautions.judge(*pull >= newtons(Of::guard_load),
                 {"guard-load",
                  where,
                  {"It guards a deck and is reckoned for a pull of {}; {} wanted.",
                   {Load{*pull}, Of::guard_load}},
                  {Of::guard_load},
                  "",
                  {}});
}

void judge_step(const Scene& scene, const Ladder& ladder, Cautions& cautions) {
  std::optional<double> least;
  bool all = true;
  for (int rung : ladder.rungs) {
    std::optional<double> load;
    for (const Fastening& fastening : scene.in.design.fastenings) {
      const auto of = pieces_of(scene, fastening);
      if (std::find(of.begin(), of.end(), rung) != of.end()) add(load, fastening.load_n);
    }
    all = all && load;
    if (load && (!least || *load < *least)) least = load;
  }
  const std::string where =
      scene.piece(ladder.rungs.front()).name + " to " + scene.piece(ladder.rungs.back()).name;
  if (!all)
    return cautions.say(
        {"load-not-stated",
         where,
         {"The design states no load for what holds a rung: a step takes {}.", {Of::step_load}},
         {Of::step_load},
         "",
         {}});
  cautions.judge(*least >= newtons(Of::step_load),
                 {"step-load",
                  where,
                  {"A rung is reckoned for {}; {} wanted.", {Load{*least}, Of::step_load}},
                  {Of::step_load},
                  "",
                  {}});
}

// Who climbs: a child of up to ten, else an adult.
Of climber(const Audience& audience) {
  const bool small = audience.ages && audience.oldest <= limit(Of::boy_age).value;
  return small ? Of::boy_of_ten : Of::man;
}

void judge_feet(const Scene& scene, const Ladder& ladder, Cautions& cautions) {
  const Of who = climber(scene.audience);
  for (const Foot& foot : scene.in.design.feet) {
    const auto of = pieces_named(scene.in.pieces, scene.in.design, foot.part);
    const bool here = std::any_of(of.begin(), of.end(), [&](int k) {
      return std::find(ladder.rails.begin(), ladder.rails.end(), k) != ladder.rails.end();
    });
    if (!here || !foot.load_n) continue;
    cautions.judge(
        *foot.load_n >= newtons(who),
        {"foot-load",
         foot.part,
         {"It is reckoned to sink under {}; who climbs may weigh {}.", {Load{*foot.load_n}, who}},
         {who},
         "",
         {}});
  }
}

}  // namespace

void loads(const Scene& scene, const std::vector<Deck>& decks, const std::vector<Ladder>& ladders,
           Cautions& cautions) {
  for (const Deck& deck : decks) {
    judge_deck(scene, deck, cautions);
    for (int piece : guards_of(scene, deck)) judge_guard(scene, piece, cautions);
  }
  for (const Ladder& ladder : ladders) {
    judge_step(scene, ladder, cautions);
    judge_feet(scene, ladder, cautions);
  }
}

}  // namespace nook::safe
