// What to mind at one hole, in the words of the trade.
#pragma once

#include <string>
#include <vector>

#include "fasten/hole_rows.h"

namespace nook {

/// One place for a screw among those on its stud.
struct HoleSite {
  const Hanging& hanging;
  const Seated& seat;
  const StudHoles& on_stud;  // all of them
  bool inferred = false;     // the stud was not found
  bool proved = false;       // both its edges were, by nail at this height
};

/// Probe first, too shallow, deep enough to reach a cable, services, pre-boring, shims.
std::vector<std::string> warnings_at(const HoleSite& site);

}  // namespace nook
