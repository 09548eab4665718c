// The findings of a fit, each with a name that holds from one fit to the next; flaws are those that
// are not `fits`.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "base/notation.h"
#include "fit/fit_answer.h"

namespace nook {

/// What an edge that cannot meet its surface at all is missed by: no figure, more than any
/// (chosen).
inline constexpr double kNoMeeting = 1000;

struct Flaw {
  enum class Kind { contact, clash, clearance, covered, rest, rungs };
  Kind kind = Kind::contact;
  int index = 0;     // into the answer's list of that kind
  std::string key;   // the same finding has it in every fit of this design
  std::string text;  // "deck, left edge at the right wall: gap 0 to 7/8, 1/8 is accepted"
  Verdict verdict = Verdict::fits;
  double over_mm = 0;   // by how much it is missed in the adjusted room
  double chance = 1;    // that it holds
  double sd_mm = 0;     // of what it is judged by
  double spare_mm = 0;  // how far the adjusted room is from missing it; negative: missed
};

/// Every finding, in the order of the answer.
std::vector<Flaw> findings_of(const FitAnswer& answer, Rounding rounding);

/// Those that are not `fits`: worst first, the least likely first among equals.
std::vector<Flaw> flaws_among(std::vector<Flaw> findings);

/// A finding missed by less is on the verge: it may turn while another one is settled (chosen).
inline constexpr double kMarginal = kMillimetresPerInch / 64;

/// Two shares of the draws nearer than this are alike (chosen).
inline constexpr double kSameChance = 0.02;

/// The first flaw of `after` that is more of one than in `before`; null where nothing got worse.
const Flaw* worsened(const std::vector<Flaw>& before, const std::vector<Flaw>& after);

/// How much is wrong: findings that do not fit by more than a margin, that do not fit, that are
/// flaws at all. Less is better, the first number first.
using Rank = std::array<int, 3>;
Rank rank_of(const std::vector<Flaw>& flaws);

/// The flaw of that key; null where there is none.
const Flaw* flaw_named(const std::vector<Flaw>& flaws, const std::string& key);

/// Findings of the adjusted room alone, judged with the plus-or-minus that the same findings have
/// in `known`, as if each were normal: a quick look ahead at what the draws will say.
std::vector<Flaw> foretold(std::vector<Flaw> findings, const std::vector<Flaw>& known, double sure);

}  // namespace nook
