// How deep and how long a notch has to be, and its outline before it is clipped.
#pragma once

#include "fit/trials.h"
#include "solid/polygon.h"

namespace nook {

/// A notch measured from the edge, clearance included.
struct NotchDepth {
  bool needed = false;  // false: the obstacle does not reach the edge
  double depth = 0;     // of a square notch
  double deeper = 0;    // what every depth of the adjusted room needs more, clearance not included
  double sd = 0;        // of the obstacle less the touch
  Stretch t;            // along the edge; may run beyond its ends
};
NotchDepth notch_depth(const Trials& trials, const Joint& joint, const NotchZone& zone,
                       double sure);

/// A rectangle on the edge.
Polygon square_notch(const Joint& joint, const NotchZone& zone, const NotchDepth& depth);
/// The obstacle's own outline as the edge meets it, grown by the clearance.
Regions profile_notch(const Trials& trials, const Joint& joint, const NotchZone& zone,
                      const NotchDepth& depth);
/// The box of an obstacle on a face that lies over it.
Polygon face_notch(const Trials& trials, const Joint& joint, const NotchZone& zone, double sure);
/// A part's section through the whole thickness, grown by the clearance.
Regions part_notch(const Trials& trials, const Joint& joint, int part, double sure);

}  // namespace nook
