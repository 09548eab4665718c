// The readings of a job in walking order, as rows to fill in or to read back.
#pragma once

#include <string>
#include <vector>

#include "base/notation.h"
#include "room/survey.h"

namespace nook {

/// One reading: how to take it, where, and what was read (empty where it is still to be taken).
struct ReadingRow {
  std::string what, where, read;
};
/// Rows that are taken in one go.
struct ReadingGroup {
  std::string name;  // "Left wall: out of plumb and flat"
  std::vector<ReadingRow> rows;
};

/// Every reading of room.toml in the order one walks: level line and floor, corners, walls, studs,
/// obstacles, marks, ceiling, the way in. Struck readings say so. Groups without rows are left out.
std::vector<ReadingGroup> readings_in_walking_order(const Survey& survey, const Rounding& rounding);

}  // namespace nook
