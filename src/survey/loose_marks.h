// Marks that the spans do not hold in place among the others.
#pragma once

#include <string>
#include <vector>

#include "survey/solution.h"

namespace nook {

/// Names of marks that can move against the marks they are tied to without any reading seeing it.
/// A net of marks that moves or turns as a whole is not loose.
std::vector<std::string> loose_marks(const RoomModel& model, const Solution& solution);

}  // namespace nook
