// Pieces that would go in before what carries them.
#pragma once

#include "fit/fit_answer.h"

namespace nook {

/// Pieces that rest, as drawn, on others that go in after them, and on nothing that is there by
/// then: not screwed to a wall, not on the floor. One rests on another where a contact or a
/// fastening joins them and its underside is at the other's top. Needs `answer.groups`.
std::vector<EarlyFit> find_early(const Design& design, const FitAnswer& answer);

}  // namespace nook
