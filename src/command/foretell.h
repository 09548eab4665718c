// Foretells a straight tape: for --expect, and the one to take before cutting.
#pragma once

#include <string>
#include <vector>

#include "command/worked.h"
#include "sheet/foretold.h"

namespace nook {

/// Throws UsageFault where a word of --expect has no colon: a job, which has to stand before it.
void require_marks(const std::vector<std::string>& words);

/// What `words` of --expect ask: WALL:LENGTH twice and height:LENGTH, or mark:NAME twice.
/// Bare lengths are in the units of room.toml. Throws UsageFault.
Foretold foretell(const std::vector<std::string>& words, const Job& job, const RoomWorked& room);

/// The diagonal that ties the two walls together where the design ends on them: the one that has to
/// come out right before anything is cut.
Foretold proof_of(const Job& job, const RoomWorked& room, const FitAnswer& fit);

}  // namespace nook
