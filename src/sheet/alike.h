// What holds of several alike, said once.
#pragma once

#include <string>
#include <vector>

#include "sheet/answer.h"

namespace nook {

/// Names in one line, copies that follow each other by their numbers: "front slat 1 to 10", "rung
/// 1, rung 2; deck, left edge" with "; " as the separator.
std::string names_said(const std::vector<std::string>& names, const std::string& separator = ", ");

/// Findings that differ in nothing but their place told once, at the first one's, with all places.
std::vector<Finding> told_once(const std::vector<Finding>& findings);

}  // namespace nook
