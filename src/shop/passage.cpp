// Ladder round a corner, rectangle in a rectangle, stick under a ceiling.
#include "shop/passage.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/invariant.h"

namespace nook {
namespace {

constexpr int kCoarse = 64;  // steps of the first look over the swing. Chosen
constexpr int kRefinements =
    80;  // golden sections: the angle is then good to 1e-16 of a turn. Chosen

double length_at(TurnSize turn, double width, double t) {
  const double s = std::sin(t), c = std::cos(t);
  return (turn.from * c + turn.to * s - width) / (s * c);
}

// The least of length_at between two angles that bracket it.
double least_between(TurnSize turn, double width, double low, double high) {
  constexpr double kGolden = 0.6180339887498949;
  for (int i = 0; i < kRefinements; ++i) {
    const double span = kGolden * (high - low);
    const bool left = length_at(turn, width, high - span) < length_at(turn, width, low + span);
    (left ? high : low) = left ? low + span : high - span;
  }
  return length_at(turn, width, 0.5 * (low + high));
}

double least_over_swing(TurnSize turn, double width) {
  const double step = std::numbers::pi / 2 / kCoarse;
  int best = 1;
  for (int i = 2; i < kCoarse; ++i)
    if (length_at(turn, width, i * step) < length_at(turn, width, best * step)) best = i;
  return least_between(turn, width, (best - 1 + 1e-9) * step, (best + 1 - 1e-9) * step);
}

}  // namespace

double longest_thin(TurnSize turn) {
  return std::pow(std::cbrt(turn.from * turn.from) + std::cbrt(turn.to * turn.to), 1.5);
}

double longest_round(TurnSize turn, double width) {
  if (width > std::min(turn.from, turn.to)) return 0;
  return std::max({turn.from, turn.to, least_over_swing(turn, width)});
}

double turn_spare(TurnSize turn, double p, double q) {
  const double across = std::min(turn.from, turn.to) - std::min(p, q);
  if (across < 0) return across;
  return std::min(across, longest_round(turn, std::min(p, q)) - std::max(p, q));
}

bool passes_opening(Section opening, Section box) {
  const double a = std::max(opening.across, opening.up), b = std::min(opening.across, opening.up);
  const double p = std::max(box.across, box.up), q = std::min(box.across, box.up);
  if (p <= a) return q <= b;
  const double square = p * p + q * q;
  return q <= b && b * square >= 2 * p * q * a + (p * p - q * q) * std::sqrt(square - a * a);
}

double widest_through(Section opening, double q) {
  if (q > std::min(opening.across, opening.up)) return 0;
  double low = std::max(opening.across, opening.up);
  double high = std::hypot(opening.across, opening.up);
  for (int i = 0; i < kRefinements; ++i) {
    const double middle = 0.5 * (low + high);
    (passes_opening(opening, {q, middle}) ? low : high) = middle;
  }
  return low;
}

double tipping_height(double h, double t) {
  return std::hypot(h, t);
}

double tipped_length(double length, double deep, double height) {
  const double across = std::hypot(length, deep);
  require(deep <= height && height < across, "a tipped stick is between level and upright");
  const double raised = std::asin(height / across) - std::atan2(deep, length);
  return length * std::cos(raised) + deep * std::sin(raised);
}

}  // namespace nook
