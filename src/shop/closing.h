// How far a piece moves closer to what its edge is cut to, and what its stock has left beyond it.
#pragma once

#include "fit/fit_answer.h"
#include "shop/outline.h"

namespace nook {

/// Wood that the stock has beyond a side as drawn, mm: lumber is no wider than its section and no
/// longer than it is sold, a panel no larger than its sheet. Half of it where the opposite side is
/// cut to the room too. Infinite where the design does not say.
double wood_beyond(const Piece& piece, const Design& design, EdgeSide side);

/// The widest gap of a contact less what is wanted open, mm; never under 0.
double widest_open(const ContactFit& found);

/// How far the piece comes closer when a tapered or scribed edge closes up, mm: first by what it
/// stands off its drawn place, then by what the stock lacks beyond the edge.
double closing(const Piece& piece, const Design& design, const ContactFit& found);

/// The lengths, and of sheets the widths, that a stock is sold in, mm.
std::vector<double> sizes_of(const Stock& stock);

}  // namespace nook
