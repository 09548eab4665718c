// What has to be cut out of each piece for boards, obstacles and parts.
#pragma once

#include "fit/fit_answer.h"
#include "fit/trials.h"

namespace nook {

/// Notches of every contact that has `notch`, deep enough in a share `sure` of the rooms, clearance
/// added, through the whole thickness, clipped to the outline.
std::vector<NotchFit> find_notches(const Trials& trials, double sure);

/// The notches of one piece as regions to be cut out of it.
Regions cut_out_of(const std::vector<NotchFit>& notches, int piece);

}  // namespace nook
