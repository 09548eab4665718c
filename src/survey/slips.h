// The slips that people make with a tape: what a reading would have been without one.
#pragma once

#include <string>
#include <vector>

#include "survey/room_model.h"

namespace nook {

/// One way in which a reading may have come to be wrong.
struct Slip {
  double meant = 0;   // the reading without it; mm
  double rate = 0;    // how often, of all readings
  std::string words;  // "a burned inch not taken off"
};

/// Every named slip that could lie behind a reading. No rates are published for most of them: 0.5
/// to 1 % of trivial acts go wrong (Panko), shared out by what is usual at work (chosen).
std::vector<Slip> slips(const Survey& survey, const Observation& reading);

/// Of slips that are none of the named ones: how often, and the sd of their size, mm. Chosen.
inline constexpr double kOtherSlipRate = 0.003, kOtherSlipSize = 50;

}  // namespace nook
