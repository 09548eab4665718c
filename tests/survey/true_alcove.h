// A simulated alcove of three walls: shares no code with the adjustment.
#pragma once

#include <array>

#include "true_room.h"

namespace nook::test {

/// Left, back and right wall; the base lines of left and back meet at the origin, the back wall
/// runs along +y to the right one.
struct TrueAlcove {
  struct Side {
    Vec2 start, along, out;
    double lean = 0;
    Waves waves;
  };
  std::array<Side, 3> sides;

  TrueAlcove(const Kind& kind, Random& random);
  double out(int wall, double a, double z) const;
  Vec2 point(int wall, double a, double z) const;
  /// Where walls k and k + 1 meet: base-line distances on both.
  std::array<double, 2> corner(int k, double z) const;
  /// The point on `wall` at a straight distance from corner k.
  Vec2 mark(int k, int wall, double along, double z) const;
  double diagonal(int k, double first, double second, double z) const;
  double back_length(double z) const;
  double across(double out_of_back, double z) const;
};

/// Two diagonals a corner and everything else once or twice.
Survey alcove_survey(const TrueAlcove& room, Random& random);

}  // namespace nook::test
