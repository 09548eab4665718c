// Wood taken off a piece that was cut wrong: off which sides, and what that spoils.
#pragma once

#include <vector>

#include "shop/judged.h"
#include "shop/verify.h"

namespace nook {

/// Whether two trims take wood off the same sides.
bool same_edges(const Remedy& a, const Remedy& b);

/// What is too much between two sides, off one of them or the other, where every figure is accepted
/// after it or has a fault of its own; wood left wild stays. Else as add_laid.
void add_trims(std::vector<Remedy>& remedies, const Judged& judged, CutFault::Of of);

/// The two best ways (chosen) to lay the needed piece out on this one, after which every figure is
/// accepted or told to come short; those that spoil more than the best are left out.
void add_laid(std::vector<Remedy>& remedies, const Judged& judged);

}  // namespace nook
