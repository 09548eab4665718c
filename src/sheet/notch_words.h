// A notch in words that a person can lay out.
#pragma once

#include <string>

#include "fit/fit_answer.h"
#include "sheet/answer.h"

namespace nook {

/// "panel: 3/4" wide, 5 3/8" high, for the left wall baseboard", rounded up.
std::string notch_words(const NotchFit& notch, const Style& style);

/// Where its edge is then scribed or tapered, which brings the piece closer: that this is before;
/// else empty.
std::string finish_words(const FitAnswer& fit, const NotchFit& notch, const Style& style);

/// "; it follows the profile: ..." with its steps along the edge; empty for a square one.
std::string profile_words(const FitAnswer& fit, const NotchFit& notch, const Style& style);

}  // namespace nook
