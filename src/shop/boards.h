// Pieces laid out on boards: first fit, longest first.
#pragma once

#include <string>
#include <vector>

namespace nook {

/// What a saw takes at each cut, mm: 1/8 in (common practice, no source).
inline constexpr double kKerf = 3.175;

/// One length to be cut, mm.
struct Stick {
  std::string part;
  double length = 0;
};
/// A board to buy and what comes off it, from one end on.
struct BoardCut {
  double length = 0;
  std::vector<Stick> sticks;

  double used() const;  // pieces and the cuts between them
};
struct BoardPlan {
  std::vector<BoardCut> boards;  // longest first
  std::vector<Stick> too_long;   // longer than any board that is sold

  /// The share of what is bought that ends in no piece, 0 to 1.
  double waste() const;
};

/// 1. Every stick lies on one board, with a kerf between neighbors; none overlap.
/// 2. First fit decreasing on the longest boards; each board is then taken as short as is sold.
/// 3. Without lengths for sale every stick is too long.
BoardPlan lay_on_boards(std::vector<Stick> sticks, std::vector<double> for_sale);

}  // namespace nook
