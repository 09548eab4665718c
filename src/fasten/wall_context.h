// One wall with its studs and services: what all pieces on it share.
#pragma once

#include <optional>
#include <vector>

#include "fasten/services.h"
#include "fasten/stud_line.h"

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
/// The wall as found; `draws` tell how far its corner may lean.
WallContext context_of(const Survey& survey, const RoomShape& room,
                       const std::vector<RoomShape>& draws, int wall);

}  // namespace nook
