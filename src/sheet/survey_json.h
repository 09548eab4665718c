// The room after a guided entry, as a JSON answer.
#pragma once

#include <string>

#include "sheet/answer.h"
#include "survey/report.h"

namespace nook {

/// The answer `survey` as text: what `room` says, under its own name.
std::string survey_json_text(const RoomReport& report, const std::string& job);

}  // namespace nook
