// One piece hung on one wall: its holes, how many, and what they carry.
#pragma once

#include <string>
#include <vector>

#include "fasten/drill.h"
#include "fasten/hole_rows.h"
#include "fasten/wall_context.h"

namespace nook {

struct Hung {
  HungPiece piece;
  std::vector<Hole> holes;  // numbered and in the order of WallDrill::holes
  std::vector<Unreachable> unreachable;
  std::optional<Untold> untold;
  Strength strength;
};

/// The wall's name and how many holes it has already: ids go on from there.
struct HoleCount {
  std::string wall;
  std::size_t before = 0;
};

/// As many screws a stud as the design says; more where the load asks for them and they fit.
Hung hung_on(const Hanging& hanging, const WallContext& context, const HoleCount& count);

}  // namespace nook
