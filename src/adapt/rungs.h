// Ladders whose last step, up to the deck, comes out unlike the others once the carpet gives way.
#pragma once

#include <string_view>
#include <vector>

#include "adapt/candidate.h"
#include "adapt/flaw.h"

namespace nook {

/// Rungs that lead up to a deck, as they are under a person.
struct RungLadder {
  int part = 0;                      // of the rungs, index into Design::parts
  int deck = 0;                      // piece
  std::vector<int> rails;            // parts of the same group that stand on the floor
  double rise_mm = 0;                // from rung to rung
  double last_mm = 0;                // from the highest rung up to the deck, the ladder sunk
  double least_mm = 0, most_mm = 0;  // the same for the least and the most that it may sink
  double sinks_mm = 0;               // likeliest
  double first_mm = 0;               // top of the lowest rung above the floor as walked on
};

/// Ladders of level sticks drawn with `repeat`, one straight above the other, and a deck over them.
/// Cleats, which the design puts on a wall, are no rungs.
std::vector<RungLadder> rung_ladders(const Design& design, const FitAnswer& answer);

/// What tells how far a ladder sinks: the reading that settles a last step that cannot be told.
inline constexpr std::string_view kSquashTest =
    "stand on a block as large as a foot of the ladder, on the carpet: your weight and how far it "
    "sinks ([floor] squash)";

/// One finding a ladder, in their order: a last step that differs by over 1/4 in does not fit;
/// where only what the carpet may do decides, it cannot be told.
std::vector<Flaw> rung_findings(const Design& design, const FitAnswer& answer, Rounding rounding);

/// Uprights made longer below the lowest rung, and rungs spaced anew; the rungs stay even.
std::vector<Ladder> rung_candidates(const Workbench& bench, const Flaw& flaw);

}  // namespace nook
