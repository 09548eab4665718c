// Where a stud is believed to be, as a sum of Gaussians: heavy tails, slips and doubled studs kept.
#pragma once

#include <optional>
#include <vector>

#include "room/survey.h"

namespace nook {

/// One look at a stud: an edge (side -1 or +1 along the base line) or its middle (side 0).
struct StudLook {
  double at = 0;  // base-line distance, mm
  double z = 0;
  int side = 0;
  FoundBy by = FoundBy::finder;
  std::optional<double> sd;  // stated by the person
};

/// A Gaussian over a block of studs: the middle of the block at the belief's height, and its lean.
struct StudGuess {
  double weight = 0;
  int plies = 1;                // 2 = a doubled stud
  unsigned slips = 0;           // bit n: look n is taken for a slip
  double centre = 0, lean = 0;  // mm; mm per mm up
  double var_centre = 0, cov = 0, var_lean = 0;
};

/// The line a screw's shank takes through the stud, projected on the wall: base-line distances at
/// the wallboard's back and at the tip.
struct Strike {
  double z = 0;
  double enter = 0, tip = 0;
};

/// What the looks say about one stud.
/// 1. Weights sum to 1 for a stud that was found, to less for one that is only inferred.
/// 2. `chance` integrates over everything believed; no normal tails are assumed.
class StudBelief {
 public:
  StudBelief(double width, double z, std::vector<StudGuess> guesses);

  double width() const { return width_; }
  /// Likeliest number of plies.
  int plies() const { return plies_; }
  /// Middle of the likeliest block at height z and its sd, in the likeliest reading of the looks.
  double centre(double z) const;
  double sd(double z) const;
  double lean() const;
  /// Middle of the ply nearest to `a` at height z, in the likeliest block.
  double ply(double a, double z) const;
  /// Chance that the strike stays `edge` inside one stud. `spread` is the sd of everything besides
  /// the stud's own place (laying out, tape), mm.
  double chance(const Strike& strike, double edge, double spread) const;

 private:
  double width_, z_;
  std::vector<StudGuess> guesses_;
  int plies_ = 1;
  StudGuess core_;  // moments of the likeliest block
};

/// The posterior after all looks. `lean_sd` (mm per mm) is how far from the corner's own line a
/// stud may lean. Requires: at least one sight.
StudBelief believe(std::vector<StudLook> sights, double width, double lean_sd);

/// A look that is a slip: 0.5 % per trivial act (Panko, human error rates; rounded), anywhere
/// within about a foot (sd 100 mm, chosen).
inline constexpr double kSlipShare = .005, kSlipSd = 100;

/// The sd of one look, mm: as stated, else by how it was found.
double sight_sd(FoundBy by, bool edge);

}  // namespace nook
