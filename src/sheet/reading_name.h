// What a reading is called on a page: in words, with the line where it stands.
#pragma once

#include <string>

#include "survey/report.h"

namespace nook {

/// "left wall, plumb line 1, reading 6 (line 43)" for the id `wall[0].plumb[0].line[5]`; the id
/// itself where the report has no such reading.
std::string reading_name(const std::string& id, const RoomReport& report);

/// How many of them there are, and the first few by name.
std::string reading_names(const std::vector<std::string>& ids, const RoomReport& report);

}  // namespace nook
