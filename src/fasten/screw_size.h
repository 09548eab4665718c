// What a screw measures: nominal and root diameter, tip, thread, bending strength, holes to drill.
#pragma once

#include <optional>

#include "design/design.h"

namespace nook {

/// Inches and psi, as published.
struct ScrewSize {
  double diameter = 0;          // nominal: of the shank
  double root = 0;              // under the thread
  double tip = 0;               // length of the tapered tip
  double thread = 0;            // length of the thread, tip not counted for lags
  double bending_strength = 0;  // Fyb
};

/// By the tables of NDS 2018 appendix L; none for a size that they do not list, and for screws
/// whose strength is not theirs to give (structural, drywall).
std::optional<ScrewSize> size_of(const Screw& screw);

/// Nominal diameter, mm: from the gauge or as typed; 0 where neither is given.
double diameter_of(const Screw& screw);

/// Dowel bending yield strength by nominal diameter, psi (NDS 2018 table I1).
double bending_strength(double diameter_in);

/// How deep the screw goes into the wood behind a piece, mm, driven square through it; `thickness`
/// is the piece's, `gap` what lies between the two. 0 or less: it does not reach.
double embedment_of(const Screw& screw, double thickness, double gap);

/// Diameters of the holes to drill, mm.
struct Pilot {
  double thread = 0, shank = 0, clearance = 0;
};
/// `gravity` is of the wood that takes the thread; `pulled`: the load pulls it out.
Pilot pilot_for(const Screw& screw, double gravity, bool pulled);

}  // namespace nook
