// The names of marks: corners are called after their walls.
#pragma once

#include <optional>
#include <string>

#include "room/survey.h"

namespace nook {

/// "left/right".
std::string corner_name(const Survey& survey, int corner);
/// The corner of that name.
std::optional<int> corner_named(const Survey& survey, const std::string& name);

}  // namespace nook
