// The cautions in words.
#pragma once

#include <string>
#include <vector>

#include "safety/safety.h"
#include "sheet/answer.h"

namespace nook {

/// What may keep the job from being built as it is: dangers, and cautions that cannot be told.
/// Worst first, those in the same words once.
std::vector<Finding> safety_findings(const SafetyAnswer& answer, const Style& style);
/// The cautions that are sure, a paragraph for those in the same words: what the first is about,
/// where else just so, and where with other figures. Empty where there is none.
std::string sure_cautions(const SafetyAnswer& answer, const Style& style);

/// Every caution in a line with its source, those that differ in nothing but their place in one.
std::vector<std::string> caution_lines(const SafetyAnswer& answer, const Style& style);

/// The page that `nookfit safety` prints: every caution with its source, worst first. 80 columns.
std::string safety_text(const SafetyAnswer& answer, const Style& style);

}  // namespace nook
