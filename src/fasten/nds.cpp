// The formulas of NDS 2018 chapter 12 that wood screws and lag screws need.
#include "fasten/nds.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace nook {
namespace {

constexpr double kSmallDowel = 0.25;  // in; below it the grain's direction does not count (12.3.3)

double to_fifty(double psi) {
  return std::round(psi / 50) * 50;
}

// Rd of a fastener under 1/4 in, by the diameter that the yield equations use.
double small_reduction(double diameter) {
  return diameter <= .17 ? 2.2 : 10 * diameter + .5;
}

}  // namespace

double wood_withdrawal(double gravity, double diameter_in) {
  return 2850 * gravity * gravity * diameter_in;
}

double lag_withdrawal(double gravity, double diameter_in) {
  return 1800 * std::pow(gravity, 1.5) * std::pow(diameter_in, .75);
}

double bearing_strength(double gravity, double diameter_in, double angle_deg) {
  if (diameter_in < kSmallDowel) return to_fifty(16600 * std::pow(gravity, 1.84));
  const double along = to_fifty(11200 * gravity);
  const double across = to_fifty(6100 * std::pow(gravity, 1.45) / std::sqrt(diameter_in));
  const Direction d = direction(degrees(angle_deg));
  return along * across / (along * d.sin * d.sin + across * d.cos * d.cos);
}

Reduction reduction_for(const ScrewSize& size, double angle_deg) {
  const double k = 1 + .25 * angle_deg / 90;
  if (size.diameter < kSmallDowel) {
    const double r = small_reduction(size.root);
    return {r, r, r};
  }
  if (size.root < kSmallDowel) {
    const double r = small_reduction(size.root) * k;
    return {r, r, r};
  }
  return {4 * k, 3.6 * k, 3.2 * k};
}

Yield lateral(const ScrewSeat& seat) {
  const ScrewSize& s = seat.size;
  Shear shear;
  shear.diameter = s.root;
  shear.main_strength = bearing_strength(seat.main_gravity, s.diameter, seat.main_angle);
  shear.side_strength = bearing_strength(seat.side_gravity, s.diameter, seat.side_angle);
  shear.main_length = std::max(0.0, seat.penetration - s.tip / 2);  // 12.3.5.3 (from memory)
  shear.side_length = seat.side_length;
  shear.gap = seat.gap;
  shear.moment = s.bending_strength * s.root * s.root * s.root / 6;
  return least_yield(shear, reduction_for(s, std::max(seat.main_angle, seat.side_angle)));
}

double withdrawal(const ScrewSeat& seat) {
  const double seated = seat.lag ? seat.penetration - seat.size.tip : seat.penetration;
  const double thread = std::clamp(seated, 0.0, seat.size.thread);
  return thread * (seat.lag ? lag_withdrawal(seat.main_gravity, seat.size.diameter)
                            : wood_withdrawal(seat.main_gravity, seat.size.diameter));
}

bool deep_enough(const ScrewSeat& seat) {
  constexpr double kRounding = 1e-9;
  return seat.lag ? seat.penetration - seat.size.tip >= 4 * seat.size.diameter - kRounding
                  : seat.penetration >= 6 * seat.size.diameter - kRounding;
}

double combined(double lateral_lb, double withdrawal_lb, double angle_deg) {
  const Direction d = direction(degrees(angle_deg));
  return withdrawal_lb * lateral_lb / (withdrawal_lb * d.cos * d.cos + lateral_lb * d.sin * d.sin);
}

}  // namespace nook
