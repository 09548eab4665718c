// What an adjustment keeps.
#pragma once

#include "survey/adjustment.h"
#include "survey/solution.h"

namespace nook {

struct Adjustment::Parts {
  std::shared_ptr<const Survey> survey;
  RoomModel model;
  Solution solution;
  RoomShape room;
  RoomReport report;
  bool complete = false;
};

}  // namespace nook
