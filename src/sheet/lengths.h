// Lengths in the answers' words.
#pragma once

#include <string>

#include "base/notation.h"

namespace nook {

/// `41 3/8"`.
inline std::string size(double mm, Rounding rounding) {
  return with_unit(millimetres(mm), rounding);
}
/// `41 3/8`.
inline std::string bare(double mm, Rounding rounding) {
  return written(millimetres(mm), rounding);
}

}  // namespace nook
