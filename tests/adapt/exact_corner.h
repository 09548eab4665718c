// A corner of two flat plumb walls, read without error.
#pragma once

#include <string>

namespace nook::test {

/// room.toml of a left and a right wall, 96 in long, at that angle; by a laser's level line.
std::string corner_room(double degrees);

}  // namespace nook::test
