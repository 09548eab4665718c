// A corner room with a small loft in it, made by hand: nothing in it is even on both sides, so that
// a mirrored drawing cannot hide.
#pragma once

#include <cmath>
#include <memory>

#include "base/length.h"
#include "sheet/scene.h"

namespace nook {

/// Everything a JobScene points to, kept together.
struct SampleScene {
  Survey survey;
  RoomShape room;
  std::vector<RoomShape> draws;
  RoomReport report;
  Design design;
  std::vector<Piece> pieces;
  std::vector<Frame> frames;
  DrillAnswer drill;
  Rounding rounding = usual_rounding(Unit::inch);

  SampleScene();
  JobScene scene() const {
    return {survey, room, draws, report, pieces, frames, &design, nullptr, &drill, rounding};
  }
};

}  // namespace nook
