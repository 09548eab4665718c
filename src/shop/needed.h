// The pieces as the room needs them: finished outlines, notches, and what may stray.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "fit/fit_answer.h"
#include "shop/outline.h"

namespace nook {

/// What one side of a piece may stray, mm: outward (too large) and inward (too small).
struct SideAllowance {
  double over = 0, under = 0;
  double wild = 0;          // wood left on it besides, to be scribed off in the room
  bool met = false;         // something is beside it
  bool meets_wall = false;  // a wall, the floor or the ceiling: what is missing there can be hidden
  bool to_room = false;     // tapered or scribed: nothing is laid off from it
  bool exact = false;       // a clearance beside it: a size may not be rounded up
};

/// A notch in a corner of a piece: its width from the side edge and its height from bottom or top.
struct NeededNotch {
  std::string corner;                  // "lower left", "lower right", "upper left", "upper right"
  double width_mm = 0, height_mm = 0;  // from the finished lines there
  double wild_across_mm = 0, wild_up_mm = 0;  // wood left beyond them there
  double clearance_mm = 0;                    // of the width and the height, air
  std::string around;                         // "left wall baseboard"
};

/// The side that its width (across) or its height is measured from.
EdgeSide notch_side(const std::string& corner, bool across);

/// One piece as needed, in its own frame, seen from its front.
struct NeededPiece {
  std::string part;  // "rung 2"
  const Part* drawn = nullptr;
  const Stock* stock = nullptr;
  double thickness = 0;
  Polygon fitted;   // as it stands: edges scribed in the room follow their gap too
  Vec2 closer;      // how far it moves into wood that may go, against where the fit left it
  Polygon outline;  // as it leaves the shop: tapers and shop scribes applied, before notching
  std::array<SideAllowance, 4> sides;  // by EdgeSide
  std::vector<NeededNotch> notches;    // one a corner
  bool notched_between = false;        // a notch besides that opens no corner
};

/// What a piece may stray where nothing else is said: less than a saw's kerf, so that a cut on the
/// wrong side of the line is found, and more than a tape read to 1/16 in errs. Chosen.
inline constexpr double kSawStrays = 2.38125;  // 3/32 in
/// What it may be too large where one side at least is free: it can be trimmed. Chosen.
inline constexpr double kMayBeOver = 3.175;  // 1/8 in

/// What a notch may always fall short, mm: 1/32 in. Chosen.
inline constexpr double kNotchShort = 0.79375;
/// How near to a side a notch opens to it, mm. Chosen.
inline constexpr double kAtEdge = 0.5;

/// The sides that cutouts and holes are laid off from: left and bottom, else the opposite side
/// where only they are cut to the room.
struct LaidFrom {
  EdgeSide across = EdgeSide::left, up = EdgeSide::bottom;
};
LaidFrom laid_from(const NeededPiece& piece);

/// Every piece of a fit, in its order.
/// 1. A tapered edge lies on the straight line that fits the gap best and is nowhere in the wall; a
///    shop-scribed edge follows the gap itself; all others are as drawn. Wood that the piece stands
///    off its drawn place is used first, then wood is left beyond the drawn edge.
/// 2. A side may stray by kMayBeOver and kSawStrays, less where its contact accepts less.
/// 3. Notches in one corner are one: as wide and as high as the largest, the least clearance in it.
std::vector<NeededPiece> needed_pieces(const Design& design, const FitAnswer& fit);

/// Whether a contact's edge is cut to the room before it is carried there: tapered, or scribed in
/// the shop.
bool is_forecut(const Contact& contact);

}  // namespace nook
