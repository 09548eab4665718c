// The room as a JSON answer.
#pragma once

#include <string>

#include "sheet/answer.h"
#include "survey/report.h"

namespace nook {

/// The answer `room`; numbers in millimeters and degrees, not rounded; null where nothing is known.
Json room_json(const RoomReport& report, const std::string& job);

}  // namespace nook
