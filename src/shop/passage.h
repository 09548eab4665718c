// Closed forms for getting a box through an opening, round a turn and up under a ceiling.
#pragma once

// A turn seen from above. A box `length` by `width` in plan passes when the corner it swings round
// stays outside it at every angle t of the swing:
//
//        |<- b ->|
//        |       |
//   _____|       |        the inner corner is a from one outer wall and b from the other
//   a            |        length(t) = (a cos t + b sin t - width) / (sin t cos t)
//   _____________|

namespace nook {

/// A box's section, or an opening, upright: across and up, mm.
struct Section {
  double across = 0, up = 0;
};

/// A hall of width `from` that turns square into one of width `to`, both `height` high, mm.
struct TurnSize {
  double from = 0, to = 0, height = 0;
};

/// The longest thin panel that goes round the turn level, mm: (a^(2/3) + b^(2/3))^(3/2).
double longest_thin(TurnSize turn);

/// The longest box of plan width `width` (mm) that goes round the turn level: the least of
/// length(t), or the wider hall where a short box need not swing at all; 0 where it is too wide for
/// a hall.
double longest_round(TurnSize turn, double width);

/// Room to spare for a box p by q in plan, mm; negative = how much too long, or too wide.
double turn_spare(TurnSize turn, double p, double q);

/// Whether a rectangle passes a rectangular opening, turned in it as it must be: p <= a and q <= b,
/// or b (p^2 + q^2) >= 2 p q a + (p^2 - q^2) sqrt(p^2 + q^2 - a^2), with p >= q, a >= b
/// (Carver 1957, American Mathematical Monthly 64, 114-116, from memory).
bool passes_opening(Section opening, Section box);

/// The greatest p of a rectangle p by q that passes the opening turned in it; 0 where q is too
/// much.
double widest_through(Section opening, double q);

/// The height that a piece h high and t thick takes while it is tipped up: sqrt(h^2 + t^2).
double tipping_height(double h, double t);

/// A stick `length` by `deep`, one end raised until it is `height` high over all: its length in
/// plan. Requires: deep <= height < tipping_height(length, deep).
double tipped_length(double length, double deep, double height);

}  // namespace nook
