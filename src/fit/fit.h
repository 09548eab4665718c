// Puts a design into the room as found: where each piece goes, gaps, notches, clashes, verdicts.
#pragma once

#include <vector>

#include "fit/fit_answer.h"
#include "room/shape.h"
#include "room/survey.h"

namespace nook {

/// What a fit needs. `room` is the adjusted room in the frame of the design's corner; `draws` are
/// rooms from the joint posterior in that same frame (none = the room is known exactly). Baseboards
/// and obstacles come from `survey`, whose walls are those of the room in the same order.
struct FitInput {
  const Survey& survey;
  const Design& design;
  const RoomShape& room;
  const std::vector<RoomShape>& draws;
  double sure = 0.95;
  bool complete = true;  // false: readings are missing and nothing can be told
  bool shows = true;     // false: what shows unasked is not looked for
};

/// 1. Pieces stay plumb and level as drawn; groups go in one after the other and are pushed home.
/// 2. The same input gives the same bytes.
/// 3. The answer's pieces point into `input.design`, which must outlive it.
FitAnswer fit(const FitInput& input);

}  // namespace nook
