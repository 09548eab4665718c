// Facts beside the numbers that do not agree with one another.
#pragma once

#include <string>
#include <vector>

#include "room/survey.h"

namespace nook {

/// An outlet or switch clear of every stud that was found or would follow from the spacing: an
/// unfound stud, or a cable without one.
std::vector<std::string> facts_beside(const Survey& survey);

}  // namespace nook
