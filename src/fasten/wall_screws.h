// The screws of one piece into the studs of one wall, and what they carry.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "fasten/drill.h"
#include "fasten/hole_rows.h"

namespace nook {

/// What all pieces on one wall share.
struct WallContext {
  const Wall& wall;
  WallFrame frame;
  WallStuds studs;
  std::vector<ServiceZone> services;
  std::optional<int> datum;  // index into studs.lines of the proven stud
  const RoomShape& room;

  /// Index into the reports of `reports_of` of the ply of line `line` nearest to `at`.
  int report_index(int line, Vec2 at) const;
};
WallContext context_of(const Survey& survey, const RoomShape& room,
                       const std::vector<RoomShape>& draws, int wall);

/// The holes of one piece, ids not yet given, sorted along the wall and from the top.
struct WallScrews {
  std::vector<Hole> holes;
  std::vector<Seated> seats;  // of each hole
  std::vector<Unreachable> unreachable;
  std::vector<std::string> left_out;  // studs behind it that a service keeps free of screws
  std::string no_figure;              // why the NDS says nothing about this wall
  bool in_blocking = false;
};
WallScrews wall_screws(const Hanging& hanging, const WallContext& context);

/// Numbers the holes of one piece in the order to drive them: the surest at the top first, then the
/// top one furthest from it, when the piece is level; then along the top, then the rest; holes to
/// probe come last.
void number_drives(std::vector<Hole>& holes);

}  // namespace nook
