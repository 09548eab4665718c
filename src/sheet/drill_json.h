// The drilling map as a JSON answer.
#pragma once

#include <string>

#include "fasten/drill.h"
#include "sheet/answer.h"

namespace nook {

/// The answer `drill`: millimeters, newtons, chances; null where there is no figure.
Json drill_json(const DrillAnswer& answer, const std::string& job);

}  // namespace nook
