// Slow, independent looks at openings and turns: everything tried, nothing solved.
#pragma once

#include "room/survey.h"
#include "shop/box.h"

namespace nook::sweep {

/// Whether a rectangle p by q lies in one a by b at any of many angles.
bool lies_in_opening(double a, double b, double p, double q);

/// The longest box `width` wide that swings round the corner: at each angle it is laid against both
/// outer walls and lengthened until the inner corner pokes into it.
double longest_swing(double from, double to, double width);

/// Whether a box p by q gets from the middle of one hall to the middle of the other by small moves
/// and turns, every one of them free (a flood through places and angles on a grid).
bool gets_round(double from, double to, double p, double q);

/// The least plan length of a stick under a height, over a sweep of the raise.
double shortest_raised(double length, double deep, double height);

/// Whether a box passes a turn at some raise from level to upright, on edge or flat.
bool some_raise_passes(const HallTurn& turn, const Box& box);

}  // namespace nook::sweep
