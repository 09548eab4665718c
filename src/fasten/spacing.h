// How far a screw stays from edges, ends and other screws.
#pragma once

#include "design/design.h"

namespace nook {

/// All in mm.
struct Distances {
  double stud_edge = 0;    // from the axis to the edge of the stud
  double edge = 0;         // in the piece, across its grain
  double end = 0;          // in the piece, along its grain, in a pre-bored hole
  double bored_from = 0;   // nearer to an end than this the hole must be pre-bored
  double apart = 0;        // along the grain of the stud, pre-bored
  double bored_apart = 0;  // nearer to each other than this they must be pre-bored
  double least_hold = 0;   // least embedment for a design value
};
/// By the NDS and its commentary, in diameters of the screw; lags with the tip of their size.
Distances distances_for(const Screw& screw);

}  // namespace nook
