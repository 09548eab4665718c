// A candidate as the change that it makes, in the words of the trade.
#pragma once

#include "adapt/candidate.h"
#include "adapt/change.h"

namespace nook {

/// What the candidate does to `design`, before and after in the design's unit.
Change told(const Candidate& candidate, const Design& design, Rounding rounding);

}  // namespace nook
