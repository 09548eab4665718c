// The cautions in words.
#pragma once

#include <string>
#include <vector>

#include "safety/safety.h"
#include "sheet/answer.h"

namespace nook {

/// What may keep the job from being built as it is: dangers, and cautions that cannot be told; then
/// one line that counts the rest. Worst first.
std::vector<Finding> safety_findings(const SafetyAnswer& answer, const Style& style);

/// The page that `nookfit safety` prints: every caution with its source, worst first. 80 columns.
std::string safety_text(const SafetyAnswer& answer, const Style& style);

}  // namespace nook
