// A job written as text, adjusted and adapted, for tests.
#pragma once

#include <string>
#include <vector>

#include "adapt/adapt.h"
#include "room/shape.h"
#include "room/survey.h"

namespace nook::test {

/// A room as a fit takes it: the survey, its adjusted shape and draws.
struct MeasuredRoom {
  Survey survey;
  RoomShape room;
  std::vector<RoomShape> draws;
  bool complete = true;
};

/// room.toml adjusted, with so many draws. Requires: it reads without fault.
MeasuredRoom measured(const std::string& room_toml, int draws);

/// A reading without error as room.toml has it.
std::string exact(double mm);

/// `adapt` for that room.
AdaptAnswer adapted(const MeasuredRoom& room, const std::string& design_toml);

/// A file below the source folder.
std::string source_file(const std::string& path);

/// How many lines of two texts of as many lines differ; -1 where they have not as many.
int lines_changed(const std::string& before, const std::string& after);

}  // namespace nook::test
