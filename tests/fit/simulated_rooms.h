// Random rooms and random pieces in them, from a seed.
#pragma once

#include <random>

#include "fit/rooms_by_hand.h"

namespace nook::by_hand {

using Random = std::mt19937_64;

double even(Random& random, double low, double high);
double gaussian(Random& random);

/// How wild a room is.
struct Wildness {
  double angle_deg = 10;  // each corner 90 +- this
  double lean = 0.02;     // each wall +- this
  double field = 10;      // greatest sd of humps and hollows, mm
  double slope = 0.01;    // of the floor, each way +- this
};

/// A corner of two walls, or an alcove of three, with boards, shoes and now and then an outlet.
Found simulated_corner(Random& random, const Wildness& wildness);
Found simulated_alcove(Random& random, const Wildness& wildness);

/// Pieces of kind `kind`: a panel with a notch, a deck, ledgers, a panel behind a panel, ...
Design simulated_design(Random& random, int kind);
constexpr int kCornerKinds = 7;
/// A shelf between three walls, tight to the back one; the walls are named left, back, right.
Design simulated_shelf(Random& random, double width);

}  // namespace nook::by_hand
