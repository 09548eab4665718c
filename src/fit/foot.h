// What a piece stands on: its foot's area, and the level cut of a foot that leans.
#pragma once

#include "fit/trials.h"

namespace nook {

/// The area a piece stands on once its foot is cut to the floor, mm2: its lowest edges that face
/// down over its thickness, or its lower face.
double foot_area(const Trials& trials, int piece);

/// How a foot's end is cut to lie on the floor, against a cut square to the piece.
struct FootCut {
  double across_deg = 0;   // along the edge it stands on
  double through_deg = 0;  // through the thickness: a bevel
  double longer_mm = 0;    // of the longest corner over the shortest, along the piece
};
/// All 0 for pieces that lean by less than a degree (chosen: shims take that up), however the floor
/// slopes, and for those that lie.
FootCut foot_cut(const Trials& trials, int piece);

}  // namespace nook
