// What a design hangs on in a room that nobody has measured yet: spots of walls and floor, studs.
#pragma once

#include <string>
#include <vector>

#include "design/design.h"
#include "room/shape.h"
#include "survey/plan.h"

namespace nook {

/// Studs behind a piece that is fastened to them: along the wall from its corner, and the height of
/// the piece's middle; mm.
struct StudsWanted {
  int wall = 0;
  double from = 0, to = 0, height = 0;
  std::string part;
};

struct DesignWants {
  PlanWanted plan;
  std::vector<StudsWanted> studs;
};

/// 1. Of each contact with a wall or the floor: every 16 in along its edge how far the surface
///    strays from where the group's other contacts put it, known well enough at the sd that lets
///    'fits' be said within what the contact allows (a scribe in the room: 3/8 in, chosen).
/// 2. Groups are pushed home in least squares: each may move, and turn where it may, to suit all
///    its walls, those that it is tight to first.
/// 3. Where something hangs by height, the floor under what stands, or beside what hangs, to 1/4 in
///    under the level line (chosen: the rungs' evenness).
/// `room`: the room as far as it is known, in the frame of the design's corner.
DesignWants design_wants(const Design& design, const RoomShape& room);

/// Whether something stands or hangs by height, or meets the ceiling.
HeightsWanted heights_of(const Design& design);

}  // namespace nook
