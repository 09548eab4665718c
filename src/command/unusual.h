// Sizes that rooms hardly ever have: typed in another unit, or with a figure too many.
#pragma once

#include <string>
#include <vector>

#include "room/survey.h"

namespace nook {

/// Each of them in words, `a wall of 862 1/2"`; struck readings are left out.
std::vector<std::string> unusual(const Survey& survey, const Rounding& rounding);

}  // namespace nook
