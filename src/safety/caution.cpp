// The table of cautions. How pieces are known: deck.h and ladder.h.
#include "safety/caution.h"

#include <algorithm>

#include "base/invariant.h"

namespace nook {
namespace {

using enum Severity;

constexpr CautionKind kKinds[] = {
    // Openings
    {"head-trap", danger, "openings and slots as left by everything that crosses them"},
    {"neck-trap", danger, "V shapes and slots that open upwards or sideways"},
    {"finger-gap", caution, "gaps of a finger's width between pieces, and between piece and wall"},
    {"limb-gap", caution, "gaps of an arm's or a leg's width"},
    {"hole-in-deck", danger, "cutouts of a deck that one falls through"},
    // Guards
    {"guard-missing", danger, "stretches of a deck's open side with nothing above its edge"},
    {"guard-low", danger, "the least height above the deck of what stands round it"},
    {"guard-opening", danger, "openings in and under what stands round a deck"},
    {"guardrail-missing", caution, "a low platform for small children without a rail"},
    // Beds
    {"bed-rail-missing", danger, "sides of a high bed without a rail, wall sides too"},
    {"bed-rail-low", danger, "the least height of the rail above the mattress"},
    {"bed-barrier-low", caution, "the same, by the European figure"},
    {"bed-wall-rail-gap", danger, "gaps in and beside the rail on the wall side"},
    {"bed-end-gap", danger, "gaps in and beside the rail elsewhere"},
    {"bed-entry", caution, "the width of the way in through the rail"},
    {"bed-wall-gap", danger, "the gap between a high bed and the wall"},
    {"bed-treads", caution, "how far the treads up to a bed are apart"},
    {"bunk-too-young", danger, "the youngest who sleeps on a high bed"},
    // Ladders
    {"rung-grip", caution, "the thickness of rungs across the grip"},
    {"tread-not-grip", note, "flat treads, which are stood on but not held"},
    {"rungs-far-apart", caution, "how far rungs are apart, tops counted"},
    {"rungs-uneven", caution,
     "how evenly rungs are spaced, on the covering as pressed, deck counted"},
    {"work-rungs", caution, "how far the rungs of an adult's ladder are apart"},
    {"toe-room", note, "the room behind each rung"},
    {"handhold-missing", caution, "something to hold beside the way up, above the deck"},
    {"ladder-can-slide", caution, "whether anything holds the ladder to a wall"},
    {"pocket-screwed-rungs", caution, "rungs held by pocket screws alone"},
    // Heights
    {"fall-height", note, "how high a deck is above the floor"},
    {"head-room", note, "the room between deck or mattress and ceiling"},
    {"head-room-low", caution, "too little of it to sit up"},
    {"bump-under-deck", note, "a deck that heads are bumped on from below"},
    // Loads
    {"deck-load", caution, "the loads stated for what carries a deck"},
    {"guard-load", caution, "the pull stated for what stands round a deck"},
    {"guard-not-held", caution,
     "whether anything holds what stands round a deck, at both its ends"},
    {"step-load", caution, "the load stated for a rung"},
    {"foot-load", caution, "the load stated for a foot of the ladder"},
    {"load-not-stated", note, "decks, guards and rungs whose load nothing states"},
    // What stands by
    {"window-near", caution, "windows within reach of a deck"},
    {"heater-near", caution, "heaters close to a piece"},
    {"cords", note, "cords of blinds, lamps and leads beside a deck"},
    {"escape-window", note, "the window that a sleeper gets out by"},
    {"alarm-near", note, "a smoke alarm close to or behind the pieces"},
    // Standing and lifting
    {"tip-over", danger, "high and heavy things that nothing holds to a wall"},
    {"loose-lid", caution, "what lies on other pieces and nothing screws down: a lid, or a slip"},
    {"lifting", note, "the heaviest piece, and hands per lift"},
    {"weight-not-known", note, "pieces whose stock states neither density nor gravity"},
    // In the wall
    {"screw-reaches-cable", caution, "how deep screws enter the studs"},
    {"cable-run", caution, "pieces screwed over the level and upright run from a box"},
    {"pipe-behind", caution, "pieces screwed over a pipe that was found"},
    {"corner-cables", note, "pieces screwed to the wall close to a corner or the ceiling"},
    {"boxes-not-recorded", note, "walls that are screwed into and have no box on record"},
    // Practice
    {"lead-paint", note, "drilling and sanding in old rooms"},
    {"paint", note, "what children's things are painted with"},
    {"press-carpet", note, "feet on a covering that gives"},
    {"heated-floor", caution, "a floor on record as heated, and what stands on it"},
    {"tighten-again", note, "screws that work loose"},
    // What could not be checked
    {"use-not-stated", caution, "a deck, and nothing says who uses it for what"},
    {"ages-not-stated", caution, "a deck for children of unknown age"},
    {"room-not-known", caution, "a room that lacks readings"},
    {"not-checked", note, "what was left out, and why"},
};

}  // namespace

std::string_view words(Severity severity) {
  return severity == note ? "note" : severity == caution ? "caution" : "danger";
}

std::span<const CautionKind> caution_kinds() {
  return kKinds;
}

const CautionKind& caution_kind(std::string_view id) {
  const auto found = std::find_if(std::begin(kKinds), std::end(kKinds),
                                  [&](const CautionKind& kind) { return kind.id == id; });
  require(found != std::end(kKinds), "every caution is of a kind in the table");
  return *found;
}

}  // namespace nook
