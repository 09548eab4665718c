// From how deep on an overlap is one.
#pragma once

namespace nook {

/// Mm: what overlaps less deep only touches (the rule of clashes).
inline constexpr double kTouching = 0.1;

}  // namespace nook
