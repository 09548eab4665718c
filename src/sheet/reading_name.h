// What readings are called on a page: in words, with the line where they stand.
#pragma once

#include <string>
#include <vector>

#include "survey/report.h"

namespace nook {

/// `left wall, plumb line 24" from the corner, 48" up (line 43)`; the id itself where the report
/// does not know it.
std::string reading_name(const std::string& id, const RoomReport& report);

/// The first `most` of them by name, and how many more there are.
std::string names_of(const std::vector<std::string>& ids, const RoomReport& report,
                     std::size_t most = 4);

}  // namespace nook
