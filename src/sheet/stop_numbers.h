// The three numbers to stop and check before a wall is drilled: level, diagonal, gap.
#pragma once

#include <string>
#include <vector>

#include "sheet/sheet_job.h"

namespace nook {

/// `LEVEL: the line is 40 1/8" above the high spot, ...`; `DIAGONAL: ...`; `GAP: ...` - those of
/// the three that the job knows, in that order.
std::vector<std::string> stop_numbers(const SheetJob& job, int wall);

/// The diagonal alone; empty where the readings do not say it.
std::string diagonal_words(const SheetJob& job);

}  // namespace nook
