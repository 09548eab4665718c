// The room in the words of the trade: what the corner is, what cannot be right, what is missing.
#pragma once

#include <string>
#include <vector>

#include "room/survey.h"
#include "sheet/answer.h"
#include "survey/report.h"

namespace nook {

/// What is missing, and readings that disagree with the others, each with what to do.
std::vector<Finding> missing_findings(const RoomReport& report);
std::vector<Finding> suspect_findings(const RoomReport& report);
/// Both.
std::vector<Finding> room_findings(const RoomReport& report);

/// The page that `nookfit room` prints: verdict, corners and walls, findings, what to measure next;
/// with style.verbose the table of all readings. 80 columns.
std::string room_text(const RoomReport& report, const Survey& survey, const Style& style);

}  // namespace nook
