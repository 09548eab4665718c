// The cautions as a JSON answer.
#pragma once

#include <string>

#include "safety/safety.h"
#include "sheet/answer.h"

namespace nook {

/// The answer `safety`; its texts give lengths in millimeters.
Json safety_json(const SafetyAnswer& answer, const std::string& job);
/// The same as text, for those who do not see the library.
std::string safety_json_text(const SafetyAnswer& answer, const std::string& job);

}  // namespace nook
