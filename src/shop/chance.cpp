// The normal distribution.
#include "shop/chance.h"

#include <cmath>

namespace nook {

double chance_above_zero(Measured quantity) {
  if (quantity.sd <= 0) return quantity.value >= 0 ? 1 : 0;
  return 0.5 * std::erfc(-quantity.value / quantity.sd / std::sqrt(2.0));
}

}  // namespace nook
