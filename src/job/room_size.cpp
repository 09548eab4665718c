// How much one room may hold: beyond it an answer would take minutes and gigabytes.
#include <fmt/format.h>

#include "job/room_file.h"

namespace nook {
namespace {

// Chosen: a careful person takes some dozens of each. With as many an answer takes some seconds; it
// grows with the square of the readings and with the cube of the marks.
constexpr int kMostReadings = 6000, kMostDiagonals = 500, kMostMarks = 100;

void limit(RoomFile& file, std::size_t count, int most, const char* what) {
  if (count <= static_cast<std::size_t>(most)) return;
  file.source.fault({}, fmt::format("{} {} are more than {}", count, what, most),
                    fmt::format("too-many-{}", what),
                    "keep the ones that matter for the pieces; of a scan a few hundred do");
}

}  // namespace

void check_size(RoomFile& file) {
  std::size_t diagonals = 0;
  for (const Corner& corner : file.survey.corners) diagonals += corner.diagonals.size();
  limit(file, file.source.readings, kMostReadings, "readings");
  limit(file, diagonals, kMostDiagonals, "diagonals");
  limit(file, file.survey.marks.size(), kMostMarks, "marks");
}

}  // namespace nook
