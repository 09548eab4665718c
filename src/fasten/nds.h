// Reference design values of wood screws and lag screws in wood by NDS 2018, in inches and pounds.
#pragma once

#include "fasten/screw_size.h"
#include "fasten/yield.h"

// National Design Specification for Wood Construction, 2018 edition, chapter 12. Specific gravity G
// as of table 12.3.3A.

namespace nook {

/// Withdrawal from side grain, lb per inch of thread: 2850 G^2 D (12.2.2.1).
double wood_withdrawal(double gravity, double diameter_in);
/// 1800 G^1.5 D^0.75 (12.2.1.1).
double lag_withdrawal(double gravity, double diameter_in);

/// Dowel bearing strength, psi, rounded to 50 (table 12.3.3). `angle_deg` is between load and grain
/// and counts only from 1/4 in up (nominal), by Hankinson's formula (12.3.4).
double bearing_strength(double gravity, double diameter_in, double angle_deg);

/// Rd of table 12.3.1B; `angle_deg` is the greater angle of load to grain of the two members.
Reduction reduction_for(const ScrewSize& size, double angle_deg);

/// One screw as it sits: `penetration` into the main member with the tip, inches.
struct ScrewSeat {
  ScrewSize size;
  bool lag = false;
  double main_gravity = .42, side_gravity = .42;
  double main_angle = 0, side_angle = 0;  // of the load to the grain, degrees
  double side_length = 0, gap = 0, penetration = 0;
};
/// Reference lateral design value Z and its mode.
Yield lateral(const ScrewSeat& seat);
/// Reference withdrawal value of the seated thread, lb.
double withdrawal(const ScrewSeat& seat);
/// Least penetration for a lateral value: 6 D with the tip (12.1.5.6), lags 4 D without (12.1.4.6).
bool deep_enough(const ScrewSeat& seat);

/// Resistance to a load at `angle_deg` from the wood's surface: 12.4.1 (Hankinson form).
double combined(double lateral_lb, double withdrawal_lb, double angle_deg);

}  // namespace nook
