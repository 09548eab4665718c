// How to save a piece that was cut wrong, and what that spoils.
#pragma once

#include <vector>

#include "shop/judged.h"
#include "shop/verify.h"

namespace nook {

/// What may be done about the faults of a piece, the one that spoils least first.
std::vector<Remedy> remedies_for(const Judged& judged, const std::vector<CutFault>& faults);

}  // namespace nook
