// Changes a design so that it fits the room as found: as little as can be, cheapest work first.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "adapt/change.h"
#include "adapt/revision.h"
#include "base/notation.h"
#include "fit/fit_answer.h"
#include "room/shape.h"
#include "room/survey.h"

namespace nook {

/// What `adapt` needs: the text of a design that reads without fault, and the room as for a fit.
struct AdaptInput {
  const Survey& survey;
  const RoomShape& room;
  const std::vector<RoomShape>& draws;
  std::string text;  // of design.toml
  double sure = 0.95;
  bool complete = true;                          // false: readings are missing, nothing is changed
  std::function<void(int tried)> on_trial = {};  // after each design that was fitted; may be empty
};

struct AdaptAnswer {
  Revision draft;                             // the new text, and what it says
  std::vector<Change> changes;                // in the order they were made
  std::vector<Contradiction> contradictions;  // one a finding of `fit` that does not fit
  std::vector<std::string> open;              // findings of `fit` that the readings do not decide
  std::string reading;                        // that would settle one of these; empty: none known
  FitAnswer fit;                              // of the new design; points into `draft`
};

/// 1. A change is kept only where it settles or lessens a finding and makes no other one worse.
/// 2. Sizes are easy numbers of the design's unit: 1/16 in, 1 mm, 0.1 cm.
/// 3. The text differs from the old one only in the values that the changes speak of.
/// 4. `adapt` of its own text changes nothing: it goes on until nothing it knows helps.
/// 5. The same input gives the same bytes.
/// Requires: `input.text` is a sound design.
AdaptAnswer adapt(const AdaptInput& input);

}  // namespace nook
