// Studs, services and the proven stud of a wall.
#include "fasten/wall_context.h"

#include <cmath>

namespace nook {
namespace {

// The proven stud nearest to where the wall starts: a single one, both edges by nail, agreeing.
std::optional<int> proven(const WallStuds& studs) {
  constexpr double kProvenSd = 1.5;  // mm. Chosen
  for (std::size_t i = 0; i < studs.lines.size(); ++i) {
    const StudLine& s = studs.lines[i];
    if (s.by_nail && s.belief.plies() == 1 && s.belief.sd(s.z) < kProvenSd)
      return static_cast<int>(i);
  }
  return std::nullopt;
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
