// The measuring sheet as text and as JSON.
#pragma once

#include <string>

#include "sheet/answer.h"
#include "sheet/measuring_list.h"

namespace nook {

/// "fits" once nothing is left to measure for the design and the room is told; else cannot tell.
Verdict measuring_verdict(const std::vector<MeasuringStop>& stops, Verdict room);

/// The page of `nookfit survey --sheet`: steps in walking order with blanks to write in, where to
/// hold the tape, and the minutes. 80 columns.
std::string measuring_text(const MeasuringJob& job, Verdict room, const Style& style);

/// The answer `survey` with --sheet: {sheet {minutes, enough, stops[] {name, how, steps[]}}}.
std::string measuring_json(const MeasuringJob& job, Verdict room, const std::string& folder);

}  // namespace nook
