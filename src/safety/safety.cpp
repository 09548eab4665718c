// All checks, one after the other.
#include "safety/safety.h"

#include <algorithm>

#include "base/invariant.h"
#include "safety/checks.h"
#include "safety/guards.h"
#include "safety/ladder_cautions.h"
#include "safety/traps.h"

namespace nook {
namespace {

using namespace safe;

// What is no higher wants nothing round it.
Of least_platform(const Scene& scene) {
  return scene.audience.maybe_toddlers() ? Of::barrier_platform_toddler : Of::guardrail_platform;
}

std::vector<Deck> high_enough(const Scene& scene, std::vector<Deck> decks, double sure) {
  std::erase_if(decks, [&](const Deck& deck) {
    return chance_at_most(drop_of(scene, deck), mm(least_platform(scene))) >= sure;
  });
  return decks;
}

void tell_unstated(const Scene& scene, const std::vector<Deck>& decks, Cautions& cautions) {
  const Audience& audience = scene.audience;
  if (audience.stated && audience.purpose) return;
  for (const Deck& deck : decks)
    if (audience.climbed())
      cautions.want(
          {"use-not-stated",
           safe::name_of(scene, deck),
           {"This can be stood on, {} above the floor, and [use] does not say by whom and what "
            "for: rules for beds, for children and for floors differ. Checked as for play{}.",
            {drop_of(scene, deck), std::string(audience.stated ? "" : ", by children too")}},
           {least_platform(scene)},
           "",
           {}});
}

// Whether the room's file lists anything that is looked for beside a deck.
bool lists_neighbors(const Scene& scene) {
  const auto is_neighbor = [](const Obstacle& obstacle) {
    return obstacle.kind == ObstacleKind::casing || obstacle.kind == ObstacleKind::sill ||
           obstacle.kind == ObstacleKind::heater || obstacle.kind == ObstacleKind::alarm;
  };
  const auto& walls = scene.in.survey.walls;
  return std::any_of(walls.begin(), walls.end(), [&](const Wall& wall) {
    return std::any_of(wall.obstacles.begin(), wall.obstacles.end(), is_neighbor);
  });
}

/// Says what was left out, and why.
class Skipped {
 public:
  Skipped(const Scene& scene, Cautions& cautions) : scene_(scene), cautions_(cautions) {}

  void by_use(const std::vector<Deck>& decks) {
    const std::string use = "the design's use table";
    if (!scene_.audience.children)
      say("openings", {"Openings that trap children were not looked for: for adults only.", {}},
          use);
    if (!scene_.audience.climbed())
      for (const Deck& deck : decks)
        say(safe::name_of(scene_, deck),
            {"Not checked as something to stand on, {} above the floor: a seat, a desk or a "
             "shelf.",
             {drop_of(scene_, deck)}},
            use);
    if (scene_.audience.sleeps())
      say("openings",
          {"The wedge block was not tried: the sphere of {} is stricter.", {Of::head_small}},
          "16 CFR 1213.4");
  }
  void by_room(const std::vector<Deck>& decks) {
    const std::string room = "the room's readings";
    for (const Deck& deck : decks) {
      const std::string where = safe::name_of(scene_, deck);
      if (scene_.room_known() && !scene_.in.room.ceiling)
        say(where, {"Head room was not looked at: nothing says how high the ceiling is.", {}},
            room);
      if (scene_.room_known() && !lists_neighbors(scene_))
        say(where,
            {"No window, heater or alarm is on record: look round within {} of it, for lamps too, "
             "and "
             "enter what is there.",
             {Of::window_reach}},
            room);
    }
  }
  void by_hand() {
    if (scene_.audience.children)
      say("all pieces",
          {"Edges, corners, splinters, screw heads, and ropes or nets hung on it were not looked "
           "at: run a hand over everything before a child does.",
           {}},
          std::string(words(Known::no_source)));
  }

 private:
  void say(const std::string& where, Words text, const std::string& source) {
    cautions_.say({"not-checked", where, std::move(text), {}, source, {}});
  }

  const Scene& scene_;
  Cautions& cautions_;
};

void tell_unchecked(const Scene& scene, const std::vector<Deck>& decks, Cautions& cautions) {
  Skipped skipped(scene, cautions);
  skipped.by_use(decks);
  if (scene.audience.climbed()) skipped.by_room(decks);
  skipped.by_hand();
}

void check_climbed(const Scene& scene, std::vector<Deck> decks, Cautions& cautions) {
  const std::vector<Ladder> ladders = ladders_of(scene, decks);
  mark_ways_up(scene, ladders, decks);
  scene.audience.sleeps() ? bed_rails(scene, decks, cautions) : guards(scene, decks, cautions);
  deck_holes(scene, decks, ladders, cautions);
  const Holding holding(scene);
  for (const Ladder& ladder : ladders) {
    rungs(scene, decks, ladder, cautions);
    ladder_hold(scene, ladder, holding, cautions);
  }
  heights(scene, decks, cautions);
  loads(scene, decks, ladders, cautions);
  guard_hold(scene, decks, ladders, cautions);
  practice(scene, decks, ladders, cautions);
}

}  // namespace

SafetyAnswer safety(const SafetyInput& input) {
  require(input.frames.size() == input.pieces.size(), "each piece has a frame");
  const Scene scene = scene_of(input);
  Cautions cautions(input.sure);
  if (!input.complete)
    cautions.want(
        {"room-not-known",
         "the room",
         {"The room lacks readings: gaps beside walls, edges without a guard, head room and what "
          "stands on the walls were not looked at.",
          {}},
         {},
         "the room's readings",
         {}});
  const std::vector<Deck> decks = high_enough(scene, decks_of(scene), input.sure);
  if (scene.audience.children) {
    const std::vector<Look> looks = looks_of(scene);
    head_traps(scene, looks, cautions);
    neck_traps(scene, looks, cautions);
    finger_gaps(scene, looks, cautions);
  }
  if (scene.audience.climbed())
    check_climbed(scene, decks, cautions);
  else
    practice(scene, {}, {}, cautions);
  surroundings(scene, decks, cautions);
  standing(scene, Holding(scene), cautions);
  services(scene, cautions);
  tell_unstated(scene, decks, cautions);
  tell_unchecked(scene, decks, cautions);
  return {cautions.verdict(), cautions.sorted()};
}

}  // namespace nook
