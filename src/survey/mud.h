// Mud built up in a corner that nobody told of: a run of readings that all bend near it.
#pragma once

#include <optional>

#include "survey/report.h"
#include "survey/solution.h"

namespace nook {

struct Mud {
  Suspect suspect;
  double log_odds = 0;  // against nothing being wrong
};

/// The corner where untold mud explains the readings best: those that it bends, its height as
/// likely_mm. None where fewer than two readings bend.
std::optional<Mud> mud_suspect(const RoomModel& model, const Solution& solution);

}  // namespace nook
