// Changed designs with one change made smaller, to see whether it was larger than it had to be.
#pragma once

#include "design/design.h"

namespace nook::test {

/// How far a part's outline or place moved between two designs of the same parts, at most, mm.
double changed_by(const Design& before, const Design& after, int part);

/// `after` with one part (and all others of its group by as much, where they moved as it did) set
/// back towards `before` by `mm`.
Design set_back(const Design& before, const Design& after, int part, double mm);

}  // namespace nook::test
