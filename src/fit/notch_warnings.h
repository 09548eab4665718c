// What a notch leaves weak: thin wood beside it, cutouts it comes near, parts that come off.
#pragma once

#include "fit/fit_answer.h"
#include "fit/trials.h"

namespace nook {

/// Fills the warnings of every notch, the others of its piece cut too. Less than 3/4 in of wood
/// beside a notch breaks off (chosen).
void warn_of_notches(const Trials& trials, std::vector<NotchFit>& notches);

}  // namespace nook
