// The cautions for a design as it will stand in the room, with their sources.
#pragma once

#include <vector>

#include "base/verdict.h"
#include "design/piece.h"
#include "fit/fit_answer.h"
#include "room/shape.h"
#include "room/survey.h"
#include "safety/caution.h"

namespace nook {

struct DrillAnswer;

/// What the cautions are found from. `room`, `draws` and `frames` as fit/fit.h has them; with
/// `complete` false the room is not looked at, and `frames` may be those drawn.
struct SafetyInput {
  const Survey& survey;
  const Design& design;
  const RoomShape& room;
  const std::vector<RoomShape>& draws;
  const std::vector<Piece>& pieces;
  const std::vector<Frame>& frames;  // of each piece as placed
  const FitAnswer* fit = nullptr;    // where pieces stand in each draw, how feet sink
  bool complete = true;
  double sure = 0.95;
  const DrillAnswer* drill = nullptr;  // the holes as laid out
};

struct SafetyAnswer {
  Verdict verdict = Verdict::fits;
  std::vector<Caution> cautions;  // worst first
};

/// 1. Pieces are known by where they stand and how large they are, never by their names.
/// 2. The verdict is `does not fit` with a caution of severity danger, `cannot tell` where one
/// would
///    be if the plus-or-minus went the wrong way or nothing says who uses it, else `fits`.
/// 3. A mirrored room and design have the mirrored cautions.
SafetyAnswer safety(const SafetyInput& input);

}  // namespace nook
