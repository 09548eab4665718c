// By the normal distribution.
#include "shop/chance.h"

#include "base/normal.h"

namespace nook {

double chance_above_zero(Measured quantity) {
  return normal_below(quantity.value, quantity.sd);
}

}  // namespace nook
