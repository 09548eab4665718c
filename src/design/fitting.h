// What the ways of fitting have in common.
#pragma once

#include "design/design.h"

namespace nook {

/// Whether the edge itself is cut to what it meets.
constexpr bool is_cut_to_fit(Fitting by) {
  return by == Fitting::scribe || by == Fitting::taper;
}

}  // namespace nook
