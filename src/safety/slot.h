// Narrow places between two sides: slots and V shapes, found by circles that touch both sides.
#pragma once

#include <vector>

#include "safety/air.h"

namespace nook::safe {

/// A circle held between two sides.
struct Slot {
  Vec2 middle;
  double across = 0;     // its diameter, mm
  double angle_deg = 0;  // between the sides where it touches them: 0 = parallel
  Touch sides[2];
  Vec2 opens;  // unit: the way the slot gets wider, or up where it does not
};

/// A circle for every stretch of border (one each kBorderStep) that faces another less than `most`
/// across at an angle below `angle_deg`. The ball that shrinks until it touches nothing but the two
/// (Ma, Bae and Choi 2012). Borders outside the window are left out.
std::vector<Slot> slots(const Air& air, Window window, double most, double angle_deg);
inline constexpr double kBorderStep = 10;  // mm; chosen

/// What one comes to when one follows a slot in a straight line.
enum class SlotEnd { wide, floor, blocked };
/// The way it opens, or with `back` the other way. `wide`: a circle of `most` has room there.
SlotEnd followed(const Air& air, const Slot& slot, double most, bool back = false);

}  // namespace nook::safe
