// Studs, services and the proven stud of a wall.
#include "fasten/wall_context.h"

#include <cmath>

namespace nook {
namespace {

bool is_proven(const StudLine& s) {
  constexpr double kProvenSd = 1.5;  // mm. Chosen
  return s.by_nail && s.belief.plies() == 1 && s.belief.sd(s.z) < kProvenSd;
}

// The proven stud nearest to where the wall starts: a single one, both edges by nail, agreeing. One
// that stands outside the even spacing, perhaps by a slip of the tape, only where no other is.
std::optional<int> proven(const WallStuds& studs) {
  std::optional<int> outside;
  for (std::size_t i = 0; i < studs.lines.size(); ++i) {
    if (!is_proven(studs.lines[i])) continue;
    if (studs.lines[i].on_pattern) return static_cast<int>(i);
    if (!outside) outside = static_cast<int>(i);
  }
  return outside;
}

}  // namespace

int WallContext::report_index(int line, Vec2 at) const {
  int index = 0;
  for (int i = 0; i < line; ++i) index += studs.lines[i].belief.plies();
  const StudBelief& b = studs.lines[line].belief;
  const double first = b.centre(at.y) - (b.plies() - 1) * b.width() / 2;
  return index + static_cast<int>(std::lround((b.ply(at.x, at.y) - first) / b.width()));
}

WallContext context_of(const Survey& survey, const RoomShape& room,
                       const std::vector<RoomShape>& draws, int wall) {
  WallStuds studs = studs_on(survey, room, wall, corner_lean_sd(draws, wall));
  auto services = services_on(survey, room, wall, studs);
  const auto datum = proven(studs);
  return {survey.walls[wall],
          WallFrame(room, wall),
          std::move(studs),
          std::move(services),
          datum,
          room};
}

}  // namespace nook
