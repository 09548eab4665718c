// The steps of the program, without its command line.
#include "adapted.h"

#include <fmt/format.h>

#include <fstream>
#include <sstream>
#include <stdexcept>

#include "job/job.h"
#include "source_dir.h"
#include "survey/adjustment.h"

namespace nook::test {

MeasuredRoom measured(const std::string& room_toml, int draws) {
  auto survey = parse_room(room_toml, "room.toml");
  if (!survey) throw std::runtime_error(survey.error().front().what);
  const Adjustment adjustment = adjust(*survey);
  MeasuredRoom room{std::move(*survey), {}, {}, adjustment.complete()};
  room.room = adjustment.room();
  if (room.complete) room.draws = adjustment.draws(draws);
  return room;
}

std::string exact(double mm) {
  return fmt::format("{{ is = \"{:.9f} mm\", sd = \"0.0001 mm\" }}", mm);
}

AdaptAnswer adapted(const MeasuredRoom& room, const std::string& design_toml) {
  return adapt({room.survey, room.room, room.draws, design_toml, 0.95, room.complete});
}

std::string source_file(const std::string& path) {
  std::ifstream file(std::string(NOOKFIT_SOURCE_DIR) + "/" + path);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

int lines_changed(const std::string& before, const std::string& after) {
  std::istringstream a(before), b(after);
  int changed = 0;
  for (std::string x, y;;) {
    const bool more_a = static_cast<bool>(std::getline(a, x));
    const bool more_b = static_cast<bool>(std::getline(b, y));
    if (more_a != more_b) return -1;
    if (!more_a) return changed;
    changed += x != y;
  }
}

}  // namespace nook::test
