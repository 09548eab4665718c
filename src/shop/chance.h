// The chance that a quantity known with an sd keeps to its limit.
#pragma once

#include "base/measured.h"

namespace nook {

/// The chance that a normal quantity is above 0: 0 or 1 where its sd is 0.
double chance_above_zero(Measured quantity);

}  // namespace nook
