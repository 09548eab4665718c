// Slips of the tape behind a size that is off: a burned inch, swapped digits, a 6 read as a 9.
#pragma once

#include <string>

#include "shop/verify.h"

namespace nook {

/// The likeliest slip after which the measured size would be accepted: "a burned inch not taken
/// off". Empty where no slip explains it, where it is off by less than a tape is misread, or where
/// two readings of a panel are off alike.
std::string likely_slip(const VerifyInput& input, const CutFault& fault);

}  // namespace nook
