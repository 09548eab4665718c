// The screws of one piece into the studs of one wall, and what they carry.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "fasten/drill.h"
#include "fasten/hole_rows.h"
#include "fasten/wall_context.h"

namespace nook {

/// The holes of one piece, ids not yet given, sorted along the wall and from the top.
struct WallScrews {
  std::vector<Hole> holes;
  std::vector<Seated> seats;  // of each hole
  std::vector<Unreachable> unreachable;
  std::optional<Untold> untold;       // nobody looked for studs behind it
  std::vector<std::string> left_out;  // studs behind it that a service keeps free of screws
  std::string no_figure;              // why the NDS says nothing about this wall
  std::string no_figure_advice;       // and what to do about it
  bool in_blocking = false;
};
/// Screws into the studs behind the piece, into blocking where fewer than two found studs take any;
/// none and why in a wall without wood.
WallScrews wall_screws(const Hanging& hanging, const WallContext& context);

}  // namespace nook
