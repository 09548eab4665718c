// The six ways a dowel in single shear can yield, with a gap between the members.
#pragma once

#include <array>
#include <string_view>

// AWC Technical Report 12 (2015), General Dowel Equations for Calculating Lateral Connection
// Values, solid members in single shear. Published in inches and pounds, and kept so here.

namespace nook {

/// One fastener through two members. Inches, psi, inch-pounds.
struct Shear {
  double diameter = 0;  // the root diameter where threads bear (NDS 12.3.7.1)
  double main_strength = 0, side_strength = 0;  // dowel bearing strength, psi
  double main_length = 0, side_length = 0;      // dowel bearing lengths
  double gap = 0;                               // between the members
  double moment = 0;                            // dowel bending moment, Fyb D^3 / 6
};

/// Rd of NDS table 12.3.1B: for crushing (Im, Is), turning (II), hinges (IIIm, IIIs, IV).
struct Reduction {
  double crushing = 4, turning = 3.6, hinges = 3.2;
};

struct Yield {
  std::string_view mode;  // "Im", "Is", "II", "IIIm", "IIIs", "IV"
  double pounds = 0;      // P / Rd
};

/// P / Rd of each mode, in the order Im, Is, II, IIIm, IIIs, IV.
std::array<Yield, 6> yields(const Shear& shear, const Reduction& reduction);

/// The least of them: the reference lateral design value and its mode.
Yield least_yield(const Shear& shear, const Reduction& reduction);

}  // namespace nook
