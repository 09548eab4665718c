// The table of all readings with their statistics.
#pragma once

#include <string>

#include "sheet/answer.h"
#include "survey/report.h"

namespace nook {

/// One line a reading: as given, adjusted, residual, redundancy, w, least detectable slip; and the
/// global test. At most 80 columns.
std::string readings_table(const RoomReport& report, const Style& style);

}  // namespace nook
