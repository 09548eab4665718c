// Distances in diameters, by the NDS and its commentary.
#include "fasten/spacing.h"

#include "fasten/screw_size.h"

namespace nook {

Distances distances_for(const Screw& screw) {
  const double d = diameter_of(screw);
  if (screw.kind == ScrewKind::lag) {
    // NDS 2018 12.5.1 (from memory): edge 1.5 D along the grain, 4 D where the edge is loaded
    // across it; end and spacing 4 D; penetration 4 D without the tip (12.1.4.6), whose length is
    // that of table L2; of a size that it does not list 0.65 D, the longest there.
    const auto size = size_of(screw);
    const double tip = size ? inches(size->tip).mm : .65 * d;
    return {1.5 * d, 4 * d, 4 * d, 4 * d, 4 * d, 4 * d, 4 * d + tip};
  }
  // NDS 2018 commentary C12.1.5.7 (from memory): edge 2.5 D, end and spacing along the grain 15 D,
  // 10 D in pre-bored holes; penetration 6 D with the tip (12.1.5.6).
  return {2.5 * d, 2.5 * d, 10 * d, 15 * d, 10 * d, 15 * d, 6 * d};
}

}  // namespace nook
