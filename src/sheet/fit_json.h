// The fit as a JSON answer.
#pragma once

#include <string>

#include "fit/fit_answer.h"
#include "sheet/answer.h"

namespace nook {

/// The answer `fit`; numbers in millimeters and degrees, not rounded; null where nothing is known.
Json fit_json(const FitAnswer& fit, const std::string& job);

}  // namespace nook
