// A check that names the invariant, on in every build: what it catches is our bug, never the
// user's.
#pragma once

#include <stdexcept>
#include <string>

namespace nook {

/// Our bug: an invariant that did not hold. Caught once in `main`, exit status 3.
struct BrokenInvariant : std::logic_error {
  using std::logic_error::logic_error;
};

inline void require(bool holds, const char* invariant) {
  if (!holds) throw BrokenInvariant(invariant);
}

}  // namespace nook
