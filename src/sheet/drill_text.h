// The drilling map in the words of the trade.
#pragma once

#include <string>
#include <vector>

#include "fasten/drill.h"
#include "sheet/answer.h"

namespace nook {

/// What has no stud, does not hold, or may miss, each with what to do; then what holds. Worst
/// first.
std::vector<Finding> drill_findings(const DrillAnswer& answer, const Style& style);

/// The page that `nookfit drill` prints: findings, then a table a wall and one a joint, the marks
/// for a story pole, two lines of caution. 80 columns; each number reads from a stated edge.
std::string drill_text(const DrillAnswer& answer, const Style& style);

/// What to mind at the screws from piece to piece, each warning once with the joints it is for.
std::vector<std::string> bench_warnings(const std::vector<JointDrill>& joints);

/// "front slat 1 to 10 into rail; deck into ledger".
std::string joints_said(const std::vector<const JointDrill*>& joints);

/// The drill bit for a hole: the next 1/64 in or 1/2 mm below its diameter.
std::string bit_for(double diameter_mm, Rounding rounding);

/// A mark of a story pole from its start: `15 5/16`, or `15 5/16 back`.
std::string mark_at(const StoryPole::Mark& mark, Rounding rounding);

}  // namespace nook
