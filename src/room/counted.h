// Whether readings count, and where one was taken that says no height.
#pragma once

#include <algorithm>

#include "room/reading.h"

namespace nook {

/// Whether one of them counts: it is not struck.
inline bool any_counts(const Readings& readings) {
  return std::any_of(readings.begin(), readings.end(), [](const Reading& r) { return !r.struck; });
}

/// The height of a reading that says none, 1 m. Chosen.
inline constexpr Height kUnsaidHeight{millimetres(1000), false, {}};

}  // namespace nook
