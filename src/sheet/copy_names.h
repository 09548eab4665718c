// Names that end in a number: copies of a part, holes of a wall.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace nook {

/// "left 3" -> "left " and "3".
std::pair<std::string, std::string> stem_and_number(const std::string& id);

/// Copies of one part: "rung 1, 2 and 4".
std::string copies_named(const std::vector<std::string>& names);

}  // namespace nook
