// What the readers of the parts of room.toml share.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "job/names.h"
#include "job/table.h"
#include "room/counted.h"
#include "room/survey.h"

namespace nook {

/// Longer walls are no room's, and their humps and hollows would take minutes to work out. Chosen.
inline constexpr double kLongestWallMm = 100000;

/// room.toml half read.
struct RoomFile {
  Source& source;
  Survey& survey;
  int wall_count = 0;
  Names walls = {};  // as typed, in order; empty where a name could not be read

  /// The index of the wall that a value names; a fault with the nearest name where it is none.
  std::optional<int> wall(const Node& value, std::string_view name);
  /// Whether an entry on wall `wall` counts from that wall's right corner, `usual` where it is
  /// silent.
  bool from_right(const Table& table, int wall, bool usual);
};

/// Marks within a nanometer are one.
long long nanometres(Length length);
/// A pair of heights that grows, into `to`.
void read_heights(Source& source, const Node& node, Height (&to)[2]);
/// The walls of a list of two names, as indices in the order typed.
std::optional<std::pair<int, int>> read_wall_pair(RoomFile& file, const Node& node);

void read_tools(RoomFile& file, const Table& room);
void read_walls(RoomFile& file, const Table& room);
std::optional<Baseboard> read_baseboard(Source& source, const Node& node);
void read_studs(RoomFile& file, const Node& node, int wall);
void read_corners(RoomFile& file, const Table& room);
void read_net(RoomFile& file, const Table& room);
void read_floor_and_ceiling(RoomFile& file, const Table& room);
void read_installed_and_access(RoomFile& file, const Table& room);

/// Faults that show only when the whole room is read: studs and obstacles outside their wall,
/// readings on the baseboard that do not say so, diagonals that cannot be.
void check_room(RoomFile& file);
/// More readings, diagonals or marks than an answer can be worked out for in seconds.
void check_size(RoomFile& file);
/// One diagonal, longer than its two marks together or shorter than their difference.
void check_diagonal(RoomFile& file, const Diagonal& diagonal);

}  // namespace nook
