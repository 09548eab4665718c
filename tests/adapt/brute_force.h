// Every single piece of work on a design, tried blindly: confirms that what is said to contradict
// does. Shares no code with the search for changes.
#pragma once

#include <string>

#include "adapted.h"
#include "design/design.h"
#include "fit/fit_answer.h"

namespace nook::test {

/// A move, straight cut, taper or way of meeting of the pieces in a finding that does not fit after
/// which it does, or cannot be told, with all else as well as before, in words; empty where there
/// is none. Moves and cuts go by 1 to 48 marks.
std::string settled_by_brute_force(const MeasuredRoom& room, const Design& design,
                                   const FitAnswer& fitted);

/// Whether every finding is as good in `less` as in `fitted`: its verdict, and where it cannot be
/// told, its chance to 1 in 50.
bool as_well(const FitAnswer& less, const FitAnswer& fitted);

}  // namespace nook::test
